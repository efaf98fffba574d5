#include "build/SectionWords.h"

#include <algorithm>
#include <cmath>

namespace sumpwright::build {

namespace {

using base::Message;

const Margin* worstFailing(const DrillSection& section) {
  const Margin* worst = nullptr;
  for (const Margin& margin : section.margins) {
    if (margin.passes || margin.advisory || margin.kind == LimitKind::footing) continue;
    if (worst == nullptr || margin.spare() < worst->spare()) worst = &margin;
  }
  return worst;
}

Message fitsWords(const DrillSection& section) {
  return Message("section.verdict.fits", {base::metres("entry", section.bore->entry_m),
                                          base::degrees("fall", degreesOfFall(section.bore->fall)),
                                          base::millimetres("core", 1000.0 * section.up.core_m)});
}

Message neverWords(const DrillSection& section, const SectionWish& wish) {
  if (!section.bore || !section.clash) return Message("section.verdict.no-fall");
  const bool wished = wish.bore != BoreWish{};
  if (const Margin* worst = worstFailing(section); wished && worst != nullptr) {
    return Message("section.verdict.wish-fails", {base::phrase("limit", limitWords(worst->kind)),
                                                  base::phrase("margin", worst->what)});
  }
  if (wished && section.footing_top_m) {
    return Message("section.verdict.wish-footing", {base::metres("top", *section.footing_top_m),
                                                    base::metres("low", section.up.footing_low_m)});
  }
  return Message("section.verdict.never",
                 {base::phrase("upper", limitWords(section.clash->upper)),
                  base::phrase("lower", limitWords(section.clash->lower)),
                  base::millimetres("short", -1000.0 * section.clash->room_m)});
}

}  // namespace

Message limitWords(LimitKind kind) {
  return Message("section.thing." + std::string(limitName(kind)));
}

std::optional<LimitKind> failedByWish(const DrillSection& section, const SectionWish& wish) {
  if (section.fit != Fit::never || !section.bore || !section.clash || wish.bore == BoreWish{}) {
    return std::nullopt;
  }
  if (const Margin* worst = worstFailing(section)) return worst->kind;
  return section.footing_top_m ? std::optional(LimitKind::footing) : std::nullopt;
}

Message marginWords(const Margin& margin) {
  std::string id = "section.limit." + std::string(limitName(margin.kind));
  if (margin.kind == LimitKind::gentle_fall || margin.kind == LimitKind::steep_fall) {
    return Message(id, {base::degrees("clear", degreesOfFall(margin.clear)),
                        base::degrees("needed", degreesOfFall(margin.needed))});
  }
  const bool past = margin.clear < 0.0 && margin.kind != LimitKind::barrel;
  if (past) id = "section.past." + std::string(limitName(margin.kind));
  return Message(id, {base::millimetres("clear", 1000.0 * std::abs(margin.clear)),
                      base::millimetres("needed", 1000.0 * margin.needed),
                      base::millimetres("short", 1000.0 * -margin.spare())});
}

std::vector<Message> factsOf(const DrillSection& section) {
  if (!section.bore) return {};
  const auto mm = [](const char* name, double value) {
    return base::millimetres(name, 1000.0 * value);
  };
  std::vector<Message> facts{
      Message("section.fact.hole",
              {mm("core", section.up.core_m), base::metres("entry", section.bore->entry_m),
               base::degrees("fall", degreesOfFall(section.bore->fall))}),
      Message("section.fact.way", {mm("path", section.path_m), mm("drop", section.drop_m)})};
  if (section.dig_m > 0.0) {
    facts.emplace_back("section.fact.dig", std::vector{base::metres("dig", section.dig_m)});
  }
  facts.emplace_back("section.fact.gap",
                     std::vector{mm("pipe", section.up.pipe_od_m), mm("gap", section.annulus_m)});
  facts.emplace_back("section.fact.hollow",
                     std::vector{base::number("litres", 1000.0 * section.hollow.volume_m3),
                                 base::number("buckets", section.hollow.buckets),
                                 mm("radius", section.hollow.radius_m)});
  return facts;
}

Message verdictWords(const DrillSection& section, const SectionWish& wish) {
  switch (section.fit) {
    case Fit::fits:
      return fitsWords(section);
    case Fit::fits_if_footing:
      return Message("section.verdict.if-footing",
                     {base::metres("top", *section.footing_top_m),
                      base::metres("low", section.up.footing_low_m),
                      base::metres("high", section.up.footing_high_m)});
    case Fit::never:
    case Fit::not_cored:
      break;
  }
  return neverWords(section, wish);
}

}  // namespace sumpwright::build
