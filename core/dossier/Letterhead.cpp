#include "dossier/Letterhead.h"

#include <algorithm>

#include "drawing/Box.h"

namespace sumpwright::dossier {
namespace {

constexpr const char* kLogoTag = "logo";
constexpr double kLogoHeight_mm = 14.0;
constexpr double kLogoWidth_mm = 52.0;

bool isUsable(const Logo& logo) {
  return !logo.bytes.empty() && logo.width_px > 0 && logo.height_px > 0;
}

/// As large as fits the space that is kept for it.
SheetSize logoSize(const Logo& logo) {
  const double scale = std::min(kLogoWidth_mm / logo.width_px, kLogoHeight_mm / logo.height_px);
  return {scale * logo.width_px, scale * logo.height_px};
}

struct HeadLine {
  std::string words;
  Font font;
};

std::string joinedWords(const std::vector<std::string>& parts) {
  std::string out;
  for (const std::string& part : parts) {
    if (!part.empty()) out += (out.empty() ? "" : " \u00B7 ") + part;
  }
  return out;
}

/// The firm, then all the rest one after the other: a line to each would take the plan's height.
std::vector<HeadLine> headLines(const Desk& desk, const Letterhead& head, double width_mm) {
  std::vector<HeadLine> out;
  const auto add = [&](const std::string& words, const Font& font) {
    if (words.empty()) return;
    for (auto& line : drawing::wrap(desk.voice, words, font, width_mm)) {
      out.push_back({std::move(line), font});
    }
  };
  add(head.firm, fonts::lead);
  std::vector<std::string> parts = head.lines;
  const auto stated = [&](const char* id, const std::string& words) {
    if (!words.empty()) parts.push_back(desk.say(id, {base::text("words", words)}));
  };
  stated("paper.firm.insurer", head.insurer);
  stated("paper.firm.registration", head.registration);
  stated("paper.firm.electrician", head.electrician);
  add(joinedWords(parts), fonts::small);
  return out;
}

/// Words and picture as they are set into a width.
struct Laid {
  SheetSize logo{0.0, 0.0};
  double logo_gap_mm = 0.0;
  std::vector<HeadLine> lines;
  double height_mm = 0.0;
};

Laid laidIn(const Desk& desk, const Letterhead& head, double width_mm) {
  constexpr double kBesideLogo_mm = 6.0;
  Laid laid;
  if (head.logo && isUsable(*head.logo)) {
    laid.logo = logoSize(*head.logo);
    laid.logo_gap_mm = kBesideLogo_mm;
  }
  laid.lines = headLines(desk, head, width_mm - laid.logo.width_mm - laid.logo_gap_mm);
  for (const HeadLine& line : laid.lines) laid.height_mm += drawing::leading_mm(line.font);
  laid.height_mm = std::max(laid.height_mm, laid.logo.height_mm);
  return laid;
}

/// Words from `x` on, or up to it.
void paintHead(Sketch& sketch, const Desk& desk, const Laid& laid, Point at, double x,
               drawing::HAlign align) {
  if (laid.logo.width_mm > 0.0) {
    // Room for the picture, found again by placeLogo().
    sketch.tagged(kLogoTag).fill(
        drawing::rectangle(at.x, at.y, laid.logo.width_mm, laid.logo.height_mm), desk.theme.paper);
  }
  double y = at.y;
  sketch.tagged("letterhead");
  for (const HeadLine& line : laid.lines) {
    sketch.text({x, y + desk.voice.capHeight_mm(line.font) + 0.3}, line.words, line.font,
                line.font.bold ? desk.theme.ink : desk.theme.ink2, align);
    y += drawing::leading_mm(line.font);
  }
}

}  // namespace

bool Letterhead::isEmpty() const {
  return firm.empty() && lines.empty() && insurer.empty() && registration.empty() &&
         electrician.empty() && !(logo && isUsable(*logo));
}

Rows letterheadRows(const Desk& desk, const Letterhead& head, double width_mm) {
  if (head.isEmpty()) return {};
  const Laid laid = laidIn(desk, head, width_mm);
  const double height = laid.height_mm + 2.0;
  return {{height,
           [=, &desk](Sketch& sketch, Point at) {
             const bool has_logo = laid.logo.width_mm > 0.0;
             paintHead(sketch, desk, laid, at, at.x + (has_logo ? width_mm : 0.0),
                       has_logo ? drawing::HAlign::right : drawing::HAlign::left);
             sketch.line({at.x, at.y + height - 0.6}, {at.x + width_mm, at.y + height - 0.6},
                         drawing::solid(desk.theme.rule, 1.0));
           },
           false},
          {2.0, {}, false}};
}

Row letterheadBlock(const Desk& desk, const Letterhead& head, double width_mm) {
  if (head.isEmpty()) return {0.0, {}, false};
  const Laid laid = laidIn(desk, head, width_mm);
  return {laid.height_mm,
          [=, &desk](Sketch& sketch, Point at) {
            paintHead(sketch, desk, laid, at, at.x + laid.logo.width_mm + laid.logo_gap_mm,
                      drawing::HAlign::left);
          },
          false};
}

void placeLogo(Document& document, const Letterhead& head) {
  if (!head.logo || !isUsable(*head.logo)) return;
  for (std::size_t page = 0; page < document.pages.size(); ++page) {
    for (const drawing::Item& item : document.pages[page].items) {
      const auto* fill = std::get_if<drawing::Fill>(&item.shape);
      if (fill == nullptr || item.tag != kLogoTag) continue;
      const drawing::Box box = drawing::boxOf(fill->rings.front());
      document.pictures.push_back(
          {page, box.left, box.top, box.width(), box.height(), head.logo->bytes});
    }
  }
}

}  // namespace sumpwright::dossier
