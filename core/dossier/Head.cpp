// The top of the paper: where, and is it all right; and its foot.

#include <algorithm>

#include "build/DrillSection.h"
#include "dossier/Sheet.h"
#include "dossier/Wording.h"
#include "drawing/Signs.h"
#include "plan/DesignEdits.h"
#include "plan/KindNames.h"

namespace sumpwright::dossier {
namespace {

using base::Message;
using drawing::HAlign;
using drawing::solid;

/// A pipe that goes down through the ground into its pit.
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

std::vector<std::string> addressLines(const Sheet& sheet, double width_mm) {
  const std::string address =
      sheet.job().address.empty() ? sheet.desk.say("paper.no-address") : sheet.job().address;
  return drawing::wrap(sheet.desk.voice, address, fonts::lead, width_mm);
}

std::string verdictWord(const Sheet& sheet) {
  if (!sheet.assessment) return sheet.desk.say("paper.verdict.none");
  if (sheet.assessment->waived) return sheet.desk.say("paper.verdict.waived");
  switch (sheet.assessment->state) {
    case rules::State::clear:
      return sheet.desk.say("paper.verdict.clear");
    case rules::State::advised_against:
      return sheet.desk.say("paper.verdict.advised");
    case rules::State::not_proven:
      return sheet.desk.say("paper.verdict.not-proven");
    case rules::State::refused:
      break;
  }
  return sheet.desk.say("paper.verdict.refused");
}

/// "East wall, 0.90 m from corner D and 1.70 m from corner E."
std::string where(const Sheet& sheet) {
  if (!sheet.assessment) return {};
  const perimeter::Place& place = sheet.assessment->place;
  const perimeter::Edge& edge = sheet.study.perimeter().edgeAt(place);
  std::vector<base::Arg> args{base::phrase("wall", sheet.study.perimeter().wallLabel(edge)),
                              base::metres("chainage", place.chainage_m)};
  const auto add = [&](const char* length, const char* feature, const drawing::Tie& tie) {
    args.push_back(base::metres(length, tie.length_m));
    args.push_back(base::phrase(feature, tie.label));
  };
  const auto& before = sheet.ties.before;
  const auto& after = sheet.ties.after;
  if (before) add("first", "one", *before);
  if (after) add(before ? "second" : "first", before ? "other" : "one", *after);
  if (before && after) return sheet.desk.say("paper.where-two", args);
  return sheet.desk.say(before || after ? "paper.where-one" : "paper.where", args);
}

/// What stands beside the word: the place in bold, then the sentence.
struct VerdictText {
  std::vector<std::string> bold;
  std::vector<std::string> plain;
};

/// Where the footing decides whether the hole can be drilled at all: how low it has to end, and how
/// high it may. Empty: it does not.
base::Message footingWords(const Sheet& sheet) {
  if (sheet.sump == nullptr || sheet.sump->kind != plan::SumpKind::cored || !sheet.assessment) {
    return {};
  }
  const auto section = build::drillSection(sheet.study.site(), sheet.assessment->place,
                                           build::wishOf(sheet.job(), *sheet.sump));
  if (section.fit != build::Fit::fits_if_footing) return {};
  return Message("paper.footing-decides", {base::metres("level", *section.footing_top_m),
                                           base::metres("high", section.up.footing_high_m)});
}

VerdictText verdictText(const Sheet& sheet, double word_mm, double width_mm) {
  const Desk& desk = sheet.desk;
  VerdictText out;
  const auto wrapped = [&](const std::string& words, const Font& font, double width) {
    return dossier::wrapped(desk, words, font, width);
  };
  if (!sheet.assessment) {
    out.bold = wrapped(desk.say(sheet.asked_inside ? "paper.where-inside" : "paper.where-none"),
                       fonts::lead, width_mm - word_mm);
    out.plain = wrapped(desk.say("paper.stretches-only"), fonts::body, width_mm);
    return out;
  }
  out.bold = wrapped(where(sheet), fonts::lead, width_mm - word_mm);
  out.plain = wrapped(desk.say(sheet.assessment->sentence), fonts::body, width_mm);
  if (const Message footing = footingWords(sheet); !footing.id.empty()) {
    for (auto& line : wrapped(desk.say(footing), fonts::body, width_mm)) out.plain.push_back(line);
  }
  if (sheet.assessment->close) {
    for (auto& line :
         wrapped(desk.say("paper.close-note", {base::metres("accuracy", sheet.study.accuracy_m())}),
                 fonts::body, width_mm)) {
      out.plain.push_back(line);
    }
  }
  return out;
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

Rows verdictRows(const Sheet& sheet, double width_mm) {
  constexpr double kSign_mm = 10.0;
  constexpr double kText_mm = 14.0;
  const Desk& desk = sheet.desk;
  const std::string word = verdictWord(sheet);
  const double word_mm = desk.voice.width_mm(word, fonts::verdict) + 3.0;
  // A long word leaves the place its own line.
  const bool beside = word_mm < 0.45 * (width_mm - kText_mm);
  const VerdictText text = verdictText(sheet, beside ? word_mm : 0.0, width_mm - kText_mm);
  const double bold_step = drawing::leading_mm(fonts::lead);
  const double first = beside ? 1.0 : 7.5;
  const double plain_top =
      std::max(first + bold_step * static_cast<double>(text.bold.size()) + 1.2, 7.6);
  const double height =
      std::max(kSign_mm + 1.0, plain_top + drawing::leading_mm(fonts::body) *
                                               static_cast<double>(text.plain.size()));
  const bool has = sheet.assessment.has_value();
  const auto state = has ? sheet.assessment->state : rules::State::not_proven;
  const Colour colour = has ? desk.theme.of(state).text : desk.theme.ink;
  return {
      {height,
       [=, &desk](Sketch& sketch, Point at) {
         sketch.tagged("verdict");
         if (has) {
           drawing::stateSign(sketch, desk.theme, state, {at.x + 5.2, at.y + 5.0}, kSign_mm - 1.0);
         } else {
           paintMark(sketch, desk.theme, {at.x + 5.0, at.y + 5.0});
         }
         const double x = at.x + kText_mm;
         const double cap = desk.voice.capHeight_mm(fonts::verdict);
         sketch.text({x, at.y + 0.9 + cap}, word, fonts::verdict, colour);
         const double drop = beside ? cap - desk.voice.capHeight_mm(fonts::lead) - 0.1 : 0.0;
         paintLines(sketch, desk, text.bold, {x + (beside ? word_mm : 0.0), at.y + first + drop},
                    fonts::lead, desk.theme.ink, HAlign::left);
         paintLines(sketch, desk, text.plain, {x, at.y + plain_top}, fonts::body, desk.theme.ink,
                    HAlign::left);
       },
       false},
      {2.0, {}, false}};
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
