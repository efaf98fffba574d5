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

double perSump_m2(const SuctionModel& model, std::size_t sumps) {
  return floorArea_m2(model) / static_cast<double>(std::max<std::size_t>(1, sumps));
}

bool isTooMuch(const Rule& rule, double area_m2) {
  return rule.most_m2 && area_m2 > rule.most_m2->value;
}

/// Which floor is whose is not asked.
bool asksHowFar(std::size_t sumps) { return sumps < 2; }

double farthestCorner_m(const SuctionModel& model, Point from) {
  double farthest = 0.0;
  for (const Region& region : model.regions) {
    if (region.neighbour) continue;
    for (const Point p : region.outline) {
      farthest = std::max(farthest, geometry::distance(p, from));
    }
  }
  return farthest;
}

void thumbSpans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (rules::addUnjudged(rule, site, out) || whyNoThumb(site.job)) return;
  const auto model = modelOf(site.job, {});
  if (!model) return;
  const std::size_t sumps = site.job.design.sumps.size();
  const double area = perSump_m2(*model, sumps);
  if (isTooMuch(rule, area)) {
    const Message reason("rule.sump-area",
                         {squareMetres("area", area), squareMetres("most", rule.most_m2->value)});
    rules::addSpans(rule, site, -1, rules::makeFinding(rule, site, -1, reason),
                    rules::allRings(site.perimeter), out);
    return;
  }
  if (!rule.most_m || !asksHowFar(sumps)) return;
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

std::optional<Message> whyNoThumb(const plan::Job& job, std::optional<plan::Fill> fill) {
  if (fill.value_or(job.house.fill) != plan::Fill::clean_stone) return Message("rule.sump-fill");
  const auto model = modelOf(job, {});
  if (model && !model->barriers.empty()) return Message("rule.sump-wall");
  return std::nullopt;
}

Point thumbPoint(const perimeter::Perimeter& perimeter, perimeter::Place place) {
  const perimeter::Edge& edge = perimeter.edgeAt(place);
  return perimeter.pointAt(place) + edge.thickness_m * edge.inward;
}

std::optional<SumpThumb> thumbAt(const Rule& rule, const plan::Job& job,
                                 const std::vector<Point>& from) {
  const auto model = modelOf(job, {});
  if (!model) return std::nullopt;
  SumpThumb thumb;
  thumb.area_m2 = floorArea_m2(*model);
  if (from.size() == 1) thumb.farthest_m = farthestCorner_m(*model, from.front());
  const bool far = rule.most_m && thumb.farthest_m &&
                   *thumb.farthest_m > rule.most_m->value + rules::kRounding_m;
  thumb.held = !isTooMuch(rule, perSump_m2(*model, from.size())) && !far;
  return thumb;
}

const rules::RuleJudge kSumpPerArea{rules::RuleKind::suction, thumbSpans, nothingNear, noLeast};

}  // namespace sumpwright::suction
