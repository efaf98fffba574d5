// Why, how far from what, and how good the place is.

#include <algorithm>
#include <cmath>

#include "dossier/Sheet.h"
#include "dossier/Wording.h"
#include "drawing/Signs.h"

namespace sumpwright::dossier {
namespace {

using drawing::HAlign;
using drawing::solid;

/// A sign, then the paragraph beside it.
void signedText(Writer& w, rules::State state, const std::string& words) {
  Rows rows;
  Writer inner(w.desk(), w.width());
  inner.text(words, fonts::body, w.desk().theme.ink, 4.8);
  rows = inner.take();
  if (rows.empty()) return;
  const auto line = rows.front().paint;
  const double middle = rows.front().height_mm / 2.0;
  const drawing::Theme& theme = w.desk().theme;
  rows.front().paint = [=, &theme](Sketch& sketch, Point at) {
    drawing::stateSign(sketch, theme, state, {at.x + 1.6, at.y + middle}, 2.7);
    line(sketch, at);
  };
  w.append(std::move(rows));
}

std::string findingText(const Sheet& sheet, const rules::Finding& f) {
  std::vector<base::Arg> args{base::text("rule", sheet.ruleTitle(f.rule)),
                              base::phrase("reason", f.reason)};
  if (!f.distance_m || !f.needed_m || f.thing_label.id.empty()) {
    // Some reasons begin with the rule's name themselves.
    const bool named = sheet.desk.say(f.reason).rfind(sheet.ruleTitle(f.rule), 0) == 0;
    return sheet.desk.say(named ? "paper.finding-bare" : "paper.finding", args);
  }
  args.push_back(base::metres("distance", *f.distance_m));
  args.push_back(base::metres("needed", *f.needed_m));
  args.push_back(base::phrase("thing", f.thing_label));
  return sheet.desk.say(*f.distance_m < 0.0 ? "paper.finding-on" : "paper.finding-short", args);
}

/// One line of the margins table in words.
struct MarginText {
  std::string rule;
  std::string nearest;
  std::string has;
  std::string needs;
  std::string margin;
  bool close = false;
  bool short_of = false;  ///< less than needed
};

MarginText marginText(const Sheet& sheet, const rules::Margin& m) {
  const Desk& desk = sheet.desk;
  return {sheet.ruleTitle(m.rule),
          desk.say(m.thing_label),
          desk.say("paper.margins.figure", {base::metres("length", m.distance_m)}),
          desk.say(sheet.isOwn(m.rule) ? "paper.margins.figure-own" : "paper.margins.figure-set",
                   {base::metres("length", m.needed_m)}),
          desk.say("paper.margins.signed", {base::metres("length", m.margin_m)}),
          m.close,
          m.margin_m < 0.0};
}

/// Columns of the table: the figures as wide as their words, rule and thing share the rest.
struct Columns {
  Columns(const Desk& desk, const std::vector<MarginText>& lines, double table_mm)
      : width(table_mm) {
    double has_mm = desk.voice.width_mm(desk.say("paper.margins.has"), fonts::small);
    double needs_mm = desk.voice.width_mm(desk.say("paper.margins.needs"), fonts::small);
    double margin_mm = desk.voice.width_mm(desk.say("paper.margins.margin"), fonts::small);
    for (const MarginText& line : lines) {
      has_mm = std::max(has_mm, desk.voice.width_mm(line.has, fonts::body));
      needs_mm = std::max(needs_mm, desk.voice.width_mm(line.needs, fonts::body));
      margin_mm = std::max(margin_mm, desk.voice.width_mm(line.margin, fonts::strong));
    }
    double title_mm = 0.0;
    double rule_word_mm = 0.0;
    double near_word_mm = 0.0;
    for (const MarginText& line : lines) {
      title_mm = std::max(title_mm, desk.voice.width_mm(line.rule, fonts::strong));
      rule_word_mm = std::max(rule_word_mm, widestWord_mm(desk, line.rule, fonts::strong));
      near_word_mm = std::max(near_word_mm, widestWord_mm(desk, line.nearest, fonts::body));
    }
    // No word is broken that another column, or what is between them, has room for.
    constexpr double kHair_mm = 0.1;
    const double figures = has_mm + needs_mm + margin_mm;
    const double least = rule_word_mm + near_word_mm + 2.0 * kHair_mm + figures;
    const double gap = std::clamp((width - least) / 4.0, kLeastGap_mm, kGap_mm);
    needs = width - margin_mm - gap;
    has = needs - needs_mm - gap;
    const double words = has - has_mm - gap;
    rule_mm = std::clamp(title_mm + kHair_mm, 0.3 * words, 0.4 * words);
    rule_mm = std::min(rule_mm, words - gap - near_word_mm - kHair_mm);
    rule_mm = std::max(rule_mm, std::min(rule_word_mm + kHair_mm, 0.6 * words));
    nearest = rule_mm + gap;
    nearest_mm = words - nearest;
  }
  static constexpr double kGap_mm = 2.0;
  static constexpr double kLeastGap_mm = 1.0;
  double width;  ///< also the right edge of the margins
  double needs;  ///< right edges
  double has;
  double nearest;  ///< left edge
  double rule_mm;
  double nearest_mm;
};

Row tableHead(const Desk& desk, const Columns& at) {
  const double step = drawing::leading_mm(fonts::small) + 0.6;
  const double base = (step + desk.voice.capHeight_mm(fonts::small)) / 2.0 - 0.3;
  const auto put = [&](const char* id, double x, HAlign align) {
    return drawing::Text{{x, base}, desk.say(id), fonts::small, desk.theme.ink2, align, 0.0};
  };
  const std::vector<drawing::Text> texts{put("paper.margins.rule", 0.0, HAlign::left),
                                         put("paper.margins.nearest", at.nearest, HAlign::left),
                                         put("paper.margins.has", at.has, HAlign::right),
                                         put("paper.margins.needs", at.needs, HAlign::right),
                                         put("paper.margins.margin", at.width, HAlign::right)};
  return {step,
          [=, &desk, width = at.width](Sketch& sketch, Point p) {
            for (const auto& t : texts) {
              sketch.text({p.x + t.at.x, p.y + t.at.y}, t.text, t.font, t.colour, t.align);
            }
            sketch.line({p.x, p.y + step}, {p.x + width, p.y + step}, solid(desk.theme.rule, 1.0));
          },
          true};
}

Row tableRow(const Desk& desk, const Columns& at, const MarginText& m) {
  const auto titles = wrapped(desk, m.rule, fonts::strong, at.rule_mm);
  auto nearest = wrapped(desk, m.nearest, fonts::body, at.nearest_mm);
  const std::size_t plain = nearest.size();
  if (m.close) {
    const std::string close = desk.say("paper.margins.close");
    for (auto& line : wrapped(desk, close, fonts::strong, at.nearest_mm)) {
      nearest.push_back(std::move(line));
    }
  }
  const double step = drawing::leading_mm(fonts::body);
  const double height = step * static_cast<double>(std::max(titles.size(), nearest.size())) + 0.5;
  const double base = (step + desk.voice.capHeight_mm(fonts::body)) / 2.0 + 0.1;
  return {
      height,
      [=, &desk](Sketch& sketch, Point p) {
        const drawing::Theme& t = desk.theme;
        for (std::size_t i = 0; i < titles.size(); ++i) {
          const double y = p.y + base + step * static_cast<double>(i);
          sketch.text({p.x, y}, titles[i], fonts::strong, t.ink);
        }
        for (std::size_t i = 0; i < nearest.size(); ++i) {
          const double y = p.y + base + step * static_cast<double>(i);
          sketch.text({p.x + at.nearest, y}, nearest[i], i < plain ? fonts::body : fonts::strong,
                      i < plain ? t.ink : t.warning_text);
        }
        const double y = p.y + base;
        sketch.text({p.x + at.has, y}, m.has, fonts::body, t.ink, HAlign::right);
        sketch.text({p.x + at.needs, y}, m.needs, fonts::body, t.ink, HAlign::right);
        sketch.text({p.x + at.width, y}, m.margin, fonts::strong,
                    m.short_of ? t.refused.text : t.ink, HAlign::right);
        sketch.line({p.x, p.y + height}, {p.x + at.width, p.y + height}, solid(t.hairline, 1.0));
      },
      false};
}

void scoreRow(Writer& w, const siting::ScoredPart& part) {
  const Desk& desk = w.desk();
  const double step = drawing::leading_mm(fonts::body) + 0.4;
  const double base = (step + desk.voice.capHeight_mm(fonts::body)) / 2.0;
  const double name_mm = 0.34 * w.width();
  const double figure_mm = 18.0;
  const auto title = wrapped(desk, part.title, fonts::body, name_mm);
  const std::string figures =
      part.judged ? desk.say("paper.score.part", {base::number("points", part.points),
                                                  base::number("weight", part.weight)})
                  : desk.say("paper.score.left-out");
  const double share =
      part.judged && part.weight > 0.0 ? std::clamp(part.points / part.weight, 0.0, 1.0) : 0.0;
  w.row({step * static_cast<double>(std::max<std::size_t>(1, title.size())),
         [=, &desk, judged = part.judged, width = w.width()](Sketch& sketch, Point p) {
           for (std::size_t i = 0; i < title.size(); ++i) {
             sketch.text({p.x, p.y + base + step * static_cast<double>(i)}, title[i], fonts::body,
                         judged ? desk.theme.ink : desk.theme.ink2);
           }
           sketch.text({p.x + width, p.y + base}, figures, fonts::body,
                       judged ? desk.theme.ink : desk.theme.ink2, HAlign::right);
           if (!judged) return;
           const double left = p.x + name_mm + 1.5;
           const double length = width - name_mm - 1.5 - figure_mm;
           const double y = p.y + step / 2.0 - 0.6;
           sketch.fill(drawing::rectangle(left, y, length, 1.2), desk.theme.hairline);
           if (share > 0.0)
             sketch.fill(drawing::rectangle(left, y, length * share, 1.2), desk.theme.ink2);
         },
         false});
}

/// By what path the distances of this sheet were taken.
std::string howMeasured(const Sheet& sheet) {
  const auto& run = sheet.study.site().run;
  const bool placed = run && sheet.sump != nullptr && run->sump == sheet.sump->id;
  std::string out = sheet.desk.say(placed ? "paper.margins.how-placed" : "paper.margins.how");
  const auto& margins = sheet.assessment->margins;
  if (std::any_of(margins.begin(), margins.end(), [&](const rules::Margin& m) {
        const rules::Rule* rule = sheet.rule(m.rule);
        return rule != nullptr && rule->path == rules::PathKind::string;
      })) {
    out += ' ' + sheet.desk.say("paper.margins.string");
  }
  return out;
}

}  // namespace

void writeFindings(Writer& w, const Sheet& sheet) {
  if (!sheet.assessment) return;
  // Refused by no rule, and yet no hole can be cored.
  const bool accepted =
      sheet.assessment->state != rules::State::refused || sheet.assessment->waived;
  const bool no_hole = accepted && isStopped(sheet);
  if (sheet.assessment->findings.empty() && !no_hole) return;
  w.heading(sheet.desk.say("paper.findings"));
  if (no_hole) signedText(w, rules::State::refused, sheet.desk.say(*whatIsOpen(sheet)));
  for (const rules::Finding& f : sheet.assessment->findings) {
    signedText(w, stateOf(f.weight), findingText(sheet, f));
  }
}

void writeMargins(Writer& w, const Sheet& sheet) {
  if (!sheet.assessment || sheet.assessment->margins.empty()) return;
  const double core_mm = sheet.study.site().core_m * 1000.0;
  w.heading(sheet.desk.say("paper.margins", {base::millimetres("core", core_mm)}));
  std::vector<MarginText> lines;
  bool own = false;
  for (const rules::Margin& m : sheet.assessment->margins) {
    lines.push_back(marginText(sheet, m));
    own = own || sheet.isOwn(m.rule);
  }
  const Columns at(sheet.desk, lines, w.width());
  const auto head = std::make_shared<const Row>(tableHead(sheet.desk, at));
  w.row(*head);
  for (const MarginText& line : lines) {
    Row row = tableRow(sheet.desk, at, line);
    row.head = head;
    w.row(std::move(row));
    // Its head and its notes are never alone; between rows it may go on in the next column.
    const bool first = &line == &lines.front();
    const bool last = &line == &lines.back();
    if (first || last) w.keepLastWithNext();
  }
  w.gap(0.8);
  w.keepLastWithNext();
  if (own) w.text(sheet.desk.say("paper.margins.own"), fonts::small, sheet.desk.theme.ink2);
  w.text(howMeasured(sheet), fonts::small, sheet.desk.theme.ink2);
}

void writeScore(Writer& w, const Sheet& sheet) {
  if (!sheet.assessment || sheet.assessment->score.parts.empty()) return;
  const siting::Score& score = sheet.assessment->score;
  const bool refused = sheet.assessment->state == rules::State::refused;
  w.heading(sheet.desk.say(refused ? "paper.score.would" : "paper.score",
                           {base::number("score", std::floor(score.total))}));
  for (const siting::ScoredPart& part : score.parts) {
    scoreRow(w, part);
    w.keepLastWithNext();
  }
  if (!score.complete) {
    w.text(sheet.desk.say("paper.score.incomplete"), fonts::small, sheet.desk.theme.ink2);
  }
  if (score.advisory_cost > 0.0) {
    w.text(sheet.desk.say("paper.score.cost", {base::number("cost", score.advisory_cost)}),
           fonts::small, sheet.desk.theme.ink2);
  }
}

void writePlaces(Writer& w, const Sheet& sheet) {
  constexpr std::size_t kMost = 5;
  if (sheet.assessment) return;
  const Desk& desk = sheet.desk;
  w.heading(desk.say("paper.places"));
  const auto& best = sheet.study.best();
  for (std::size_t i = 0; i < std::min(best.size(), kMost); ++i) {
    const perimeter::Edge& edge = sheet.study.perimeter().edgeAt(best[i].place);
    const drawing::Ties ties = drawing::tiesOf(sheet.study, best[i].place);
    const drawing::Tie* tie = ties.before ? &*ties.before : ties.after ? &*ties.after : nullptr;
    std::vector<base::Arg> args{base::phrase("wall", sheet.study.perimeter().wallLabel(edge)),
                                base::number("score", std::floor(best[i].score))};
    if (tie != nullptr) {
      args.push_back(base::metres("length", tie->length_m));
      args.push_back(base::phrase("feature", tie->label));
    }
    signedText(w, sheet.study.stateAt(best[i].place),
               desk.say(tie != nullptr ? "paper.place" : "paper.place-bare", args));
  }
  const auto& least = sheet.study.leastBad();
  if (best.empty() && least) {
    w.body(desk.say("paper.advice", {base::phrase("advice", least->advice)}));
  } else if (best.empty()) {
    w.body(desk.say("paper.no-place"));
  }
}

}  // namespace sumpwright::dossier
