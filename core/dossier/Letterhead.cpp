#include "dossier/Letterhead.h"

#include <algorithm>

#include "drawing/Box.h"

namespace sumpwright::dossier {
namespace {

constexpr const char* kLogoTag = "logo";
constexpr double kLogoHeight_mm = 14.0;
constexpr double kLogoWidth_mm = 52.0;
constexpr double kWideHead_mm = 190.0;  // more than A4 and letter have upright

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
  // A wide sheet has width to spare, and where it lies no height.
  if (width_mm >= kWideHead_mm) parts = {joinedWords(parts)};
  for (const std::string& part : parts) add(part, fonts::small);
  return out;
}

}  // namespace

bool Letterhead::isEmpty() const {
  return firm.empty() && lines.empty() && insurer.empty() && registration.empty() &&
         electrician.empty() && !(logo && isUsable(*logo));
}

Rows letterheadRows(const Desk& desk, const Letterhead& head, double width_mm) {
  if (head.isEmpty()) return {};
  const bool has_logo = head.logo && isUsable(*head.logo);
  const SheetSize logo = has_logo ? logoSize(*head.logo) : SheetSize{0.0, 0.0};
  const double text_mm = width_mm - (has_logo ? logo.width_mm + 6.0 : 0.0);
  const auto lines = headLines(desk, head, text_mm);
  double text = 0.0;
  for (const HeadLine& line : lines) text += drawing::leading_mm(line.font);
  const double height = std::max(text, logo.height_mm) + 2.0;
  return {{height,
           [=, &desk](Sketch& sketch, Point at) {
             // Room for the picture, found again by placeLogo().
             if (has_logo) {
               sketch.tagged(kLogoTag).fill(
                   drawing::rectangle(at.x, at.y, logo.width_mm, logo.height_mm), desk.theme.paper);
             }
             const double x = at.x + (has_logo ? width_mm : 0.0);
             const auto align = has_logo ? drawing::HAlign::right : drawing::HAlign::left;
             double y = at.y;
             sketch.tagged("letterhead");
             for (const HeadLine& line : lines) {
               sketch.text({x, y + desk.voice.capHeight_mm(line.font) + 0.3}, line.words, line.font,
                           line.font.bold ? desk.theme.ink : desk.theme.ink2, align);
               y += drawing::leading_mm(line.font);
             }
             sketch.line({at.x, at.y + height - 0.6}, {at.x + width_mm, at.y + height - 0.6},
                         drawing::solid(desk.theme.rule, 1.0));
           },
           false},
          {2.0, {}, false}};
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
