// The top of the paper, on its first page and on later ones, and its foot.

#include <algorithm>

#include "dossier/HeadParts.h"
#include "dossier/Sheet.h"
#include "dossier/Wording.h"

namespace sumpwright::dossier {
namespace {

using base::Message;
using drawing::HAlign;
using drawing::solid;

std::vector<std::string> addressLines(const Sheet& sheet, double width_mm) {
  const std::string address =
      sheet.job().address.empty() ? sheet.desk.say("paper.no-address") : sheet.job().address;
  return drawing::wrap(sheet.desk.voice, address, fonts::lead, width_mm);
}

Message methodWord(plan::SurveyMethod method) {
  switch (method) {
    case plan::SurveyMethod::laser:
      return Message("paper.method.laser");
    case plan::SurveyMethod::traced_picture:
      return Message("paper.method.traced-picture");
    case plan::SurveyMethod::map_outline:
      return Message("paper.method.map-outline");
    case plan::SurveyMethod::tape:
    case plan::SurveyMethod::not_stated:
      break;
  }
  return Message("paper.method.tape");
}

std::string footText(const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  std::string out = desk.say("paper.foot.sheet", {base::text("id", sheet.study.sheet().id),
                                                  base::text("title", sheet.study.sheet().title)});
  const plan::SurveyMethod method = sheet.job().survey_method;
  const base::Arg accuracy = base::metres("accuracy", sheet.study.accuracy_m());
  if (method == plan::SurveyMethod::not_stated) {
    out += ' ' + desk.say("paper.foot.survey-not-stated", {accuracy});
  } else {
    out +=
        ' ' + desk.say("paper.foot.survey", {base::phrase("method", methodWord(method)), accuracy});
  }
  if (!sheet.job().surveyor.empty()) {
    out += ' ' + desk.say(sheet.job().surveyed_on.empty() ? "paper.foot.surveyor"
                                                          : "paper.foot.surveyor-date",
                          {base::text("name", sheet.job().surveyor),
                           base::text("date", sheet.job().surveyed_on)});
  }
  return out;
}

std::vector<std::string> footLines(const Sheet& sheet) {
  return drawing::wrap(sheet.desk.voice, footText(sheet), fonts::small,
                       sheet.width_mm - 2 * kMargin_mm - 24.0);
}

}  // namespace

void paintMark(Sketch& sketch, const drawing::Theme& theme, Point at) {
  const drawing::Pen pen = solid(theme.ink, 3.6);
  sketch.line({at.x - 4.4, at.y}, {at.x + 4.4, at.y}, pen);
  sketch.line({at.x, at.y - 3.6}, {at.x, at.y + 1.0}, solid(theme.ink, 5.0));
  sketch.line({at.x - 1.6, at.y - 3.6}, {at.x + 1.6, at.y - 3.6}, pen);
  sketch.path(drawing::arcPoints(at, 3.1, 180.0, 180.0), pen);
}

void paintLines(Sketch& sketch, const Desk& desk, const std::vector<std::string>& lines, Point at,
                const Font& font, const Colour& colour, HAlign align) {
  const double step = drawing::leading_mm(font);
  double y = at.y + desk.voice.capHeight_mm(font);
  for (const std::string& line : lines) {
    sketch.text({at.x, y}, line, font, colour, align);
    y += step;
  }
}

std::string forWhom(const Sheet& sheet, const std::string& what) {
  if (sheet.options.date.empty()) return what;
  return sheet.desk.say("paper.dated",
                        {base::text("what", what), base::text("date", sheet.options.date)});
}

std::string documentTitle(const Sheet& sheet, const std::string& title) {
  const std::string& address = sheet.job().address;
  if (address.empty()) return title;
  return sheet.desk.say("paper.document-title",
                        {base::text("title", title), base::text("address", address)});
}

namespace {

/// Firm and paper in one band, where the sheet lies: what height there is belongs to the drawings.
Rows oneBand(const Sheet& sheet, double width_mm, const std::string& title,
             const std::string& under) {
  const Desk& desk = sheet.desk;
  const double own_mm = 0.34 * width_mm;
  const Row firm = letterheadBlock(desk, sheet.options.letterhead, width_mm - own_mm - 8.0);
  const auto address = addressLines(sheet, own_mm);
  const auto under_lines = drawing::wrap(desk.voice, under, fonts::body, own_mm);
  const double title_mm = drawing::leading_mm(fonts::verdict) + 0.6;
  const double step = drawing::leading_mm(fonts::lead);
  const double text = title_mm + step * static_cast<double>(address.size()) +
                      drawing::leading_mm(fonts::body) * static_cast<double>(under_lines.size());
  const double height = std::max(firm.height_mm, text) + 1.6;
  return {{height,
           [=, &desk](Sketch& sketch, Point at) {
             if (firm.paint) firm.paint(sketch, at);
             const double right = at.x + width_mm;
             sketch.tagged("head").text({right, at.y + desk.voice.capHeight_mm(fonts::verdict)},
                                        title, fonts::verdict, desk.theme.ink, HAlign::right);
             const double words_mm = desk.voice.width_mm(title, fonts::verdict);
             paintMark(sketch, desk.theme, {right - words_mm - 7.5, at.y + 3.4});
             paintLines(sketch, desk, address, {right, at.y + title_mm}, fonts::lead,
                        desk.theme.ink, HAlign::right);
             paintLines(sketch, desk, under_lines,
                        {right, at.y + title_mm + step * static_cast<double>(address.size())},
                        fonts::body, desk.theme.ink2, HAlign::right);
             sketch.line({at.x, at.y + height}, {right, at.y + height}, solid(desk.theme.ink, 2.0));
           },
           false},
          {3.0, {}, false}};
}

}  // namespace

Rows headRows(const Sheet& sheet, double width_mm, const std::string& title,
              const std::string& under) {
  const Desk& desk = sheet.desk;
  const bool lies = sheet.width_mm > sheet.height_mm;
  if (lies && !sheet.options.letterhead.isEmpty()) return oneBand(sheet, width_mm, title, under);
  const auto address = addressLines(sheet, width_mm * 0.42);
  const auto under_lines = drawing::wrap(desk.voice, under, fonts::body, width_mm * 0.42);
  const double step = drawing::leading_mm(fonts::lead);
  const double text = step * static_cast<double>(address.size()) +
                      drawing::leading_mm(fonts::body) * static_cast<double>(under_lines.size());
  const double height = std::max(13.0, text + 2.5);
  Rows rows = letterheadRows(desk, sheet.options.letterhead, width_mm);
  rows.emplace_back(
      height,
      [=, &desk](Sketch& sketch, Point at) {
        const double bottom = at.y + height;
        paintMark(sketch.tagged("head"), desk.theme, {at.x + 4.6, at.y + 6.0});
        sketch.text({at.x + 12.5, at.y + 4.6 + desk.voice.capHeight_mm(fonts::title) / 2.0}, title,
                    fonts::title, desk.theme.ink);
        paintLines(sketch, desk, address, {at.x + width_mm, at.y + 0.6}, fonts::lead,
                   desk.theme.ink, HAlign::right);
        paintLines(sketch, desk, under_lines,
                   {at.x + width_mm, at.y + 1.0 + step * static_cast<double>(address.size())},
                   fonts::body, desk.theme.ink2, HAlign::right);
        sketch.line({at.x, bottom}, {at.x + width_mm, bottom}, solid(desk.theme.ink, 2.0));
      },
      false);
  rows.push_back({3.5, {}, false});
  return rows;
}

Rows laterHeadRows(const Sheet& sheet, double width_mm, const std::string& title) {
  const Desk& desk = sheet.desk;
  const double title_mm = desk.voice.width_mm(title, fonts::strong);
  auto address = addressLines(sheet, width_mm - title_mm - 8.0);
  if (address.size() > 1) address = {address.front() + " \u2026"};
  return {
      {6.5,
       [=, &desk](Sketch& sketch, Point at) {
         const double base = at.y + 1.0 + desk.voice.capHeight_mm(fonts::strong);
         sketch.tagged("head").text({at.x, base}, title, fonts::strong, desk.theme.ink);
         sketch.text({at.x + width_mm, base}, address.empty() ? std::string() : address.front(),
                     fonts::body, desk.theme.ink2, HAlign::right);
         sketch.line({at.x, at.y + 5.5}, {at.x + width_mm, at.y + 5.5}, solid(desk.theme.ink, 1.4));
       },
       false},
      {3.0, {}, false}};
}

double footHeight_mm(const Sheet& sheet) {
  return 2.6 + drawing::leading_mm(fonts::small) * static_cast<double>(footLines(sheet).size());
}

void paintFoot(Sketch& sketch, const Sheet& sheet, int page, int pages) {
  const Desk& desk = sheet.desk;
  const double left = kMargin_mm;
  const double right = sheet.width_mm - kMargin_mm;
  const double top = sheet.height_mm - kMargin_mm + 2.0 - footHeight_mm(sheet);
  sketch.tagged("foot").line({left, top}, {right, top}, solid(desk.theme.ink, 1.4));
  paintLines(sketch, desk, footLines(sheet), {left, top + 1.8}, fonts::small, desk.theme.ink2,
             HAlign::left);
  sketch.text({right, top + 1.8 + desk.voice.capHeight_mm(fonts::small)},
              desk.say("paper.foot.page", {base::count("page", page), base::count("pages", pages)}),
              fonts::small, desk.theme.ink2, HAlign::right);
}

}  // namespace sumpwright::dossier
