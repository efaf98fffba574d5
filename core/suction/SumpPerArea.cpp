#include "suction/SumpPerArea.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "rules/Spans.h"
#include "suction/ModelOf.h"

namespace sumpwright::suction {

namespace {

using base::Message;
using rules::EdgePiece;
using rules::FindingSpan;
using rules::Rule;
using rules::Site;

base::Arg squareMetres(std::string name, double value) {
  return {std::move(name), base::Quantity{value, base::Unit::squareMetre}};
}

/// Pieces of one wall from whose inner face a point is farther than `most`.
void addFar(const perimeter::Edge& edge, Point p, double most, std::vector<EdgePiece>& pieces) {
  const geometry::Vec v = p - (edge.from + edge.thickness_m * edge.inward);
  const double along = geometry::dot(v, edge.along);
  const double off = geometry::dot(v, edge.inward);
  const double past = edge.length_m + 1.0;  // clipped to the wall
  const double square = most * most - off * off;
  if (square < 0.0) {
    pieces.push_back({&edge, {-1.0, past}});
    return;
  }
  const double half = std::sqrt(square) + rules::kRounding_m;
  if (along - half > 0.0) pieces.push_back({&edge, {-1.0, along - half}});
  if (along + half < edge.length_m) pieces.push_back({&edge, {along + half, past}});
}

std::vector<EdgePiece> farPieces(const Site& site, const SuctionModel& model, double most) {
  std::vector<EdgePiece> pieces;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const perimeter::Edge& edge : site.perimeter.edges(ring)) {
      for (const Region& region : model.regions) {
        for (const Point p : region.outline) addFar(edge, p, most, pieces);
      }
    }
  }
  return pieces;
}

void thumbSpans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (rules::addUnjudged(rule, site, out) || whyNoThumb(site.job)) return;
  const auto model = modelOf(site.job, {});
  if (!model) return;
  const auto sumps = std::max<std::size_t>(1, site.job.design.sumps.size());
  const double area = floorArea_m2(*model) / static_cast<double>(sumps);
  if (rule.most_m2 && area > rule.most_m2->value) {
    const Message reason("rule.sump-area",
                         {squareMetres("area", area), squareMetres("most", rule.most_m2->value)});
    rules::addSpans(rule, site, -1, rules::makeFinding(rule, site, -1, reason),
                    rules::allRings(site.perimeter), out);
    return;
  }
  if (!rule.most_m || sumps > 1) return;
  const Message reason("rule.sump-far", {base::metres("most", rule.most_m->value)});
  rules::addSpans(rule, site, -1, rules::makeFinding(rule, site, -1, reason),
                  rules::joinPieces(farPieces(site, *model, rule.most_m->value)), out);
}

std::optional<rules::Nearest> nothingNear(const Rule&, const Site&, perimeter::Place) {
  return std::nullopt;
}

std::optional<double> noLeast(const Rule&, const Site&, const rules::Thing&, int, double, double) {
  return std::nullopt;
}

}  // namespace

std::optional<Message> whyNoThumb(const plan::Job& job) {
  if (job.house.fill != plan::Fill::clean_stone) return Message("rule.sump-fill");
  const auto model = modelOf(job, {});
  if (model && !model->barriers.empty()) return Message("rule.sump-wall");
  return std::nullopt;
}

const rules::RuleJudge kSumpPerArea{rules::RuleKind::suction, thumbSpans, nothingNear, noLeast};

}  // namespace sumpwright::suction
