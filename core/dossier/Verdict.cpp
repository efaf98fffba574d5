// Whether it is all right, under the head of the paper: the word, the place, the sentence.

#include <algorithm>

#include "build/DrillSection.h"
#include "dossier/HeadParts.h"
#include "dossier/Sheet.h"
#include "dossier/Wording.h"
#include "drawing/Signs.h"

namespace sumpwright::dossier {
namespace {

using base::Message;
using drawing::HAlign;

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

}  // namespace

Rows verdictRows(const Sheet& sheet, double width_mm) {
  constexpr double kVerdictSign_mm = 10.0;
  constexpr double kBesideSign_mm = 14.0;
  const Desk& desk = sheet.desk;
  const std::string word = verdictWord(sheet);
  const double word_mm = desk.voice.width_mm(word, fonts::verdict) + 3.0;
  // A long word leaves the place its own line.
  const bool beside = word_mm < 0.45 * (width_mm - kBesideSign_mm);
  const VerdictText text = verdictText(sheet, beside ? word_mm : 0.0, width_mm - kBesideSign_mm);
  const double bold_step = drawing::leading_mm(fonts::lead);
  const double first = beside ? 1.0 : 7.5;
  const double plain_top =
      std::max(first + bold_step * static_cast<double>(text.bold.size()) + 1.2, 7.6);
  const double height =
      std::max(kVerdictSign_mm + 1.0, plain_top + drawing::leading_mm(fonts::body) *
                                                      static_cast<double>(text.plain.size()));
  const bool has = sheet.assessment.has_value();
  const auto state = has ? sheet.assessment->state : rules::State::not_proven;
  const Colour colour = has ? desk.theme.of(state).text : desk.theme.ink;
  return {{height,
           [=, &desk](Sketch& sketch, Point at) {
             sketch.tagged("verdict");
             if (has) {
               drawing::stateSign(sketch, desk.theme, state, {at.x + 5.2, at.y + 5.0},
                                  kVerdictSign_mm - 1.0);
             } else {
               paintMark(sketch, desk.theme, {at.x + 5.0, at.y + 5.0});
             }
             const double x = at.x + kBesideSign_mm;
             const double cap = desk.voice.capHeight_mm(fonts::verdict);
             sketch.text({x, at.y + 0.9 + cap}, word, fonts::verdict, colour);
             const double drop = beside ? cap - desk.voice.capHeight_mm(fonts::lead) - 0.1 : 0.0;
             paintLines(sketch, desk, text.bold,
                        {x + (beside ? word_mm : 0.0), at.y + first + drop}, fonts::lead,
                        desk.theme.ink, HAlign::left);
             paintLines(sketch, desk, text.plain, {x, at.y + plain_top}, fonts::body,
                        desk.theme.ink, HAlign::left);
           },
           false},
          {2.0, {}, false}};
}

}  // namespace sumpwright::dossier
