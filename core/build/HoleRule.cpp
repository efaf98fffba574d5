// Rule kind 6: what it says along the wall, and what waivers accept of it.

#include "build/HoleRule.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "build/SectionAlong.h"
#include "build/SectionWords.h"
#include "plan/Assumed.h"
#include "plan/KindNames.h"
#include "rules/Spans.h"
#include "rules/Waived.h"
#include "rules/WallSays.h"

namespace sumpwright::build {

namespace {

using base::Message;
using perimeter::Edge;
using rules::FindingSpan;
using rules::Rule;
using rules::Site;

template <class Ids>
bool assumes(const BuildUp& up, const Ids& ids) {
  return std::any_of(up.assumed.begin(), up.assumed.end(), [&](const Assumption& one) {
    return std::find(ids.begin(), ids.end(), one.what.id) != ids.end();
  });
}

Message neverReason(const SectionPiece& piece) {
  if (piece.stated_fails) {
    return Message(piece.assumed ? "rule.section-stated-assumed" : "rule.section-stated",
                   {base::phrase("limit", limitWords(*piece.stated_fails))});
  }
  if (!piece.clash) return Message("rule.section-no-fall");
  return Message(piece.assumed ? "rule.section-assumed" : "rule.section-never",
                 {base::phrase("upper", limitWords(piece.clash->upper)),
                  base::phrase("lower", limitWords(piece.clash->lower))});
}

/// A hole fits, but stones may come loose where one digs or cores beside them.
bool isBesideRubble(const Site& site, const Edge& edge, const SectionPiece& piece) {
  return piece.bored == Fit::fits &&
         site.perimeter.wall(edge).foundation == plan::Foundation::rubble;
}

/// Where other rules refuse the very things that keep all holes away.
class Elsewhere {
 public:
  explicit Elsewhere(const Site& site) {
    for (const Rule& rule : site.sheet.rules) {
      if (!rule.enabled || rule.severity != rules::Severity::binding) continue;
      if (rule.kind == rules::RuleKind::floor_behind)
        rules::kFloorBehind.spans(rule, site, m_floor);
      if (rule.kind != rules::RuleKind::wall) continue;
      if (rule.attribute == rules::WallAttribute::kind) {
        rules::kWallRule.spans(rule, site, m_kind);
      } else if (rule.attribute == rules::WallAttribute::foundation) {
        rules::kWallRule.spans(rule, site, m_foundation);
      }
    }
  }

  bool says(NoCore why, perimeter::Place place) const {
    switch (why) {
      case NoCore::party:
      case NoCore::dwarf:
        return says(m_kind, place, rules::Weight::binding);
      case NoCore::foundation:
        return says(m_foundation, place, rules::Weight::binding);
      case NoCore::timber:
      case NoCore::concrete:
        return says(m_floor, place, rules::Weight::unknown);
      case NoCore::deep:
        break;
    }
    return false;
  }

 private:
  /// Of a wall or zone: what cannot be judged yet says nothing of either.
  static bool says(const std::vector<FindingSpan>& spans, perimeter::Place place,
                   rules::Weight at_least) {
    return std::any_of(spans.begin(), spans.end(), [&](const FindingSpan& span) {
      return span.ring == place.ring && rules::holds(span, place.chainage_m) &&
             span.finding.weight >= at_least && !span.finding.thing.empty();
    });
  }

  std::vector<FindingSpan> m_kind;
  std::vector<FindingSpan> m_foundation;
  std::vector<FindingSpan> m_floor;
};

const Edge& edgeOf(const Site& site, const SectionPiece& piece) {
  return site.perimeter.edges(piece.ring)[static_cast<std::size_t>(piece.edge)];
}

rules::Finding holeFinding(const Rule& rule, const Site& site, const Edge& edge, Message reason) {
  rules::Finding f = rules::makeFinding(rule, site, -1, std::move(reason));
  f.thing = site.perimeter.wall(edge).id;
  f.thing_label = site.perimeter.wallLabel(edge);
  return f;
}

void takeUnknown(rules::Finding& f) {
  f.weight = rules::Weight::unknown;
  f.waivable = {};
}

/// Whether an engineer can say how it is done all the same.
bool isForAnEngineer(NoCore why) { return why == NoCore::foundation || why == NoCore::deep; }

Message noCoreReason(NoCore why, const Site& site, const Edge& edge, bool depth_assumed) {
  if (why != NoCore::deep) {
    return noCoreMessage("rule.no-core.", why, site.perimeter.wall(edge));
  }
  return Message(depth_assumed ? "rule.no-core.deep-assumed" : "rule.no-core.deep",
                 {base::metres("most", plan::kDeepestFloor_m)});
}

/// Whether nobody looked if the ground under a suspended floor is sealed.
bool isOversiteOpenQuestion(const Site& site, perimeter::Place place) {
  const plan::FloorZone* zone = floorBehind(site, place);
  return zone != nullptr && zone->oversite == plan::Oversite::unknown;
}

rules::Finding noCoreFinding(const Rule& rule, const Site& site, const SectionPiece& piece,
                             perimeter::Place middle, NoCore why) {
  const Edge& edge = edgeOf(site, piece);
  rules::Finding f =
      holeFinding(rule, site, edge, noCoreReason(why, site, edge, piece.depth_assumed));
  if (!isForAnEngineer(why)) f.waivable = {};
  const bool on_floor = why == NoCore::timber || why == NoCore::concrete;
  if (on_floor && isOversiteOpenQuestion(site, middle)) {
    takeUnknown(f);
    f.reason = Message("rule.no-core.oversite");
  }
  if (why == NoCore::deep && piece.depth_assumed) takeUnknown(f);
  return f;
}

/// Of the hole itself, where one is judged.
std::optional<rules::Finding> boredFinding(const Rule& rule, const Site& site,
                                           const SectionPiece& piece) {
  const Edge& edge = edgeOf(site, piece);
  const bool if_footing = piece.bored == Fit::fits_if_footing && rule.unknown_gates;
  const bool rubble = isBesideRubble(site, edge, piece);
  if (piece.bored != Fit::never && !if_footing && !rubble) return std::nullopt;
  rules::Finding f = holeFinding(rule, site, edge,
                                 rubble       ? Message("rule.section-rubble")
                                 : if_footing ? Message("rule.section-footing")
                                              : neverReason(piece));
  if (rubble) {
    f.weight = rules::Weight::advisory;
    f.waivable = {};
  } else if (if_footing || piece.assumed) {
    takeUnknown(f);
  }
  return f;
}

/// All that the rule says of a piece.
std::vector<rules::Finding> findingsOf(const Rule& rule, const Site& site, const Elsewhere& others,
                                       const SectionPiece& piece) {
  const perimeter::Place middle{piece.ring, 0.5 * (piece.from_m + piece.to_m)};
  std::vector<rules::Finding> found;
  for (const NoCore why : piece.no_core) {
    if (others.says(why, middle)) continue;
    found.push_back(noCoreFinding(rule, site, piece, middle, why));
  }
  if (!found.empty()) return found;
  if (auto f = boredFinding(rule, site, piece)) found.push_back(std::move(*f));
  return found;
}

void sectionSpans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (rules::addUnjudged(rule, site, out)) return;
  std::vector<std::pair<rules::Finding, std::vector<rules::RingSpan>>> found;
  const SectionAlong along = SectionAlong::of(site);
  const Elsewhere others(site);
  for (const SectionPiece& piece : along.pieces()) {
    for (const rules::Finding& f : findingsOf(rule, site, others, piece)) {
      const auto same =
          std::find_if(found.begin(), found.end(), [&](const auto& one) { return one.first == f; });
      auto& where =
          same == found.end() ? found.emplace_back(f, std::vector<rules::RingSpan>{}) : *same;
      where.second.push_back({piece.ring, piece.from_m, piece.to_m, true});
    }
  }
  for (auto& [f, where] : found) {
    rules::addSpans(rule, site, -1, f, rules::joinSpans(std::move(where)), out);
  }
}

std::optional<rules::Nearest> sectionNearest(const Rule&, const Site&, perimeter::Place) {
  return std::nullopt;
}

std::optional<double> sectionLeast(const Rule&, const Site&, const rules::Thing&, int, double,
                                   double) {
  return std::nullopt;
}

/// Whether the sump has a waiver for each of the rules that objects to the wall in some way; there
/// is one at least.
template <class Finding>
std::optional<bool> allWaived(const Site& site, perimeter::Place place, const std::string& sump,
                              const Finding& findingOf) {
  std::optional<bool> all;
  for (const Rule& rule : site.sheet.rules) {
    if (!rule.enabled || rule.severity != rules::Severity::binding) continue;
    const std::optional<rules::Finding> f = findingOf(rule);
    if (f) all = all.value_or(true) && rules::isWaived(site, *f, place, sump);
  }
  return all;
}

bool isHoleWaived(const Site& site, perimeter::Place place, const std::string& sump) {
  const Edge& edge = site.perimeter.edgeAt(place);
  return allWaived(site, place, sump,
                   [&](const Rule& rule) -> std::optional<rules::Finding> {
                     if (rule.kind != rules::RuleKind::section) return std::nullopt;
                     return holeFinding(rule, site, edge, Message());
                   })
      .value_or(false);
}

}  // namespace

bool isAssumed(const BuildUp& up) {
  static constexpr std::array<std::string_view, 10> kIds{
      "section.assumed.floor",         "section.assumed.screed", "section.assumed.insulation",
      "section.assumed.slab",          "section.assumed.ground", "section.assumed.dpc",
      "section.assumed.barrier-level", "section.assumed.wall",   "section.assumed.footing",
      "section.assumed.oversite"};
  return assumes(up, kIds);
}

bool isDepthAssumed(const BuildUp& up) {
  static constexpr std::array<std::string_view, 2> kIds{"section.assumed.floor",
                                                        "section.assumed.ground"};
  return assumes(up, kIds);
}

CoredBy coredBy(NoCore why, const Site& site, const BuildUp& up, perimeter::Place place,
                const std::string& sump) {
  if (sump.empty() || !isForAnEngineer(why)) return CoredBy::nobody;
  if (why == NoCore::foundation) {
    const Edge& edge = site.perimeter.edgeAt(place);
    const auto waived =
        allWaived(site, place, sump, [&](const Rule& rule) -> std::optional<rules::Finding> {
          const bool objects =
              rule.kind == rules::RuleKind::wall &&
              rule.attribute == rules::WallAttribute::foundation &&
              rules::saysOf(rule, site.perimeter.wall(edge)) == rules::WallSays::objects;
          if (!objects) return std::nullopt;
          return rules::wallFinding(rule, site, edge, Message());
        });
    if (waived) return *waived ? CoredBy::foundation : CoredBy::nobody;
  } else if (isDepthAssumed(up)) {
    return CoredBy::nobody;
  }
  return isHoleWaived(site, place, sump) ? CoredBy::hole : CoredBy::nobody;
}

bool acceptsHole(const Site& site, const DrillSection& section, perimeter::Place place,
                 const std::string& sump) {
  return !sump.empty() && section.fit == Fit::never && !isAssumed(section.up) &&
         isHoleWaived(site, place, sump);
}

const rules::RuleJudge kDrillSection{rules::RuleKind::section, sectionSpans, sectionNearest,
                                     sectionLeast};

}  // namespace sumpwright::build
