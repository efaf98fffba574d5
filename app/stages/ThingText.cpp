#include "stages/ThingText.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/Shapes.h"
#include "perimeter/Perimeter.h"
#include "stages/KindWords.h"
#include "stages/SitingText.h"
#include "stages/SurveyText.h"

namespace sumpwright::stages {

namespace {

struct ThingText {
  Q_DECLARE_TR_FUNCTIONS(ThingText)
};

template <class... F>
struct Overloaded : F... {
  using F::operator()...;
};
template <class... F>
Overloaded(F...) -> Overloaded<F...>;

template <class E>
QString named(const QStringList& names, E value) {
  const int index = static_cast<int>(value);
  return index >= 0 && index < names.size() ? names[index] : ThingText::tr("Thing");
}

const std::vector<plan::Point>* innerLineOf(const plan::Thing& thing) {
  return std::visit(
      Overloaded{[](const plan::InnerWall& w) { return &w.line_m; },
                 [](const plan::RisingWall& w) { return &w.line_m; },
                 [](const plan::HeatingPipe& p) { return &p.line_m; },
                 [](const plan::Radiator& r) { return &r.line_m; },
                 [](const auto&) { return static_cast<const std::vector<plan::Point>*>(nullptr); }},
      thing);
}

const std::vector<plan::Point>* outlineOf(const plan::Thing& thing) {
  return std::visit(
      Overloaded{[](const plan::Room& r) { return &r.outline_m; },
                 [](const plan::FloorZone& z) { return &z.outline_m; },
                 [](const auto&) { return static_cast<const std::vector<plan::Point>*>(nullptr); }},
      thing);
}

std::optional<plan::Point> pointOf(const plan::Thing& thing) {
  using Maybe = std::optional<plan::Point>;
  return std::visit(Overloaded{[](const plan::Supply& s) { return Maybe(s.at_m); },
                               [](const plan::Fitting& f) { return Maybe(f.at_m); },
                               [](const plan::TestHole& t) { return Maybe(t.at_m); },
                               [](const plan::OutsideThing& o) {
                                 return o.points_m.empty() ? Maybe() : Maybe(o.points_m.front());
                               },
                               [](const auto&) { return Maybe(); }},
                    thing);
}

std::optional<plan::OnWall> standsOn(const plan::Thing& thing) {
  return std::visit(Overloaded{[](const plan::Opening& o) { return std::optional(o.at); },
                               [](const plan::Service& s) { return s.entry; },
                               [](const plan::Radiator& r) { return r.on; },
                               [](const plan::WallFeature& f) { return std::optional(f.at); },
                               [](const auto&) { return std::optional<plan::OnWall>(); }},
                    thing);
}

QString letter(const plan::Job& job, int ring, std::size_t corner) {
  std::size_t first = 0;
  for (int r = 0; r < ring; ++r)
    first += job.plan.rings[static_cast<std::size_t>(r)].corners.size();
  return QString::fromStdString(perimeter::letterOfCorner(first + corner));
}

bool isThere(const plan::OnWall& at, const plan::Job& job) {
  if (at.ring < 0 || static_cast<std::size_t>(at.ring) >= job.plan.rings.size()) return false;
  const auto& corners = job.plan.rings[static_cast<std::size_t>(at.ring)].corners;
  return at.edge >= 0 && static_cast<std::size_t>(at.edge) < corners.size();
}

QString onWallText(const plan::OnWall& at, const plan::Job& job) {
  if (!isThere(at, job)) return {};
  return ThingText::tr("%1, %2 from %3")
      .arg(wallCorners(job, at.ring, at.edge), tapedLength(at.offset_m, job),
           letter(job, at.ring, static_cast<std::size_t>(at.edge)));
}

QString areaText(double area_m2, const plan::Job& job) {
  return QString::fromStdString(words::print({area_m2, base::Unit::squareMetre}, unitsOf(job)));
}

}  // namespace

QString thingKind(const plan::Thing& thing) {
  return std::visit(
      Overloaded{[](const plan::Opening& o) { return named(openingKindWords(), o.kind); },
                 [](const plan::Service& s) { return named(serviceKindWords(), s.kind); },
                 [](const plan::Room& r) { return named(roomUseWords(), r.use); },
                 [](const plan::FloorZone& z) { return named(floorKindWords(), z.kind); },
                 [](const plan::InnerWall&) { return ThingText::tr("Inner wall"); },
                 [](const plan::InnerDoor&) { return ThingText::tr("Inner door"); },
                 [](const plan::RisingWall&) { return ThingText::tr("Rising wall"); },
                 [](const plan::Radiator&) { return ThingText::tr("Radiator"); },
                 [](const plan::HeatingPipe&) { return ThingText::tr("Heating pipe"); },
                 [](const plan::Supply& s) { return named(supplyKindWords(), s.kind); },
                 [](const plan::Fitting& f) { return named(fittingKindWords(), f.kind); },
                 [](const plan::OutsideThing& o) { return named(outsideKindWords(), o.kind); },
                 [](const plan::TestHole&) { return ThingText::tr("Test hole"); },
                 [](const plan::WallFeature& f) { return named(featureKindWords(), f.kind); },
                 [](const plan::Dimension&) { return ThingText::tr("Dimension"); },
                 [](const plan::Appliance&) { return ThingText::tr("Appliance with a flue"); }},
      thing);
}

QString thingTitle(const plan::Thing& thing) {
  const std::string name = std::visit(
      [](const auto& t) {
        if constexpr (requires { t.name; }) return t.name;
        return std::string();
      },
      thing);
  return name.empty() ? thingKind(thing) : QString::fromStdString(name);
}

QString wallCorners(const plan::Job& job, int ring, int edge) {
  const plan::Ring& r = job.plan.rings[static_cast<std::size_t>(ring)];
  const auto from = static_cast<std::size_t>(edge);
  const std::size_t to = r.closed ? (from + 1) % r.corners.size() : from + 1;
  return ThingText::tr("%1 to %2").arg(letter(job, ring, from), letter(job, ring, to));
}

std::optional<plan::Wall> wallOf(const plan::Job& job, const std::string& id, int* ring,
                                 int* edge) {
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    const auto& walls = job.plan.rings[r].walls;
    for (std::size_t w = 0; w < walls.size() && w < job.plan.rings[r].corners.size(); ++w) {
      if (walls[w].id != id) continue;
      if (ring != nullptr) *ring = static_cast<int>(r);
      if (edge != nullptr) *edge = static_cast<int>(w);
      return walls[w];
    }
  }
  return std::nullopt;
}

QString wallTitle(const plan::Job& job, int ring, int edge) {
  const plan::Ring& r = job.plan.rings[static_cast<std::size_t>(ring)];
  const auto i = static_cast<std::size_t>(edge);
  const QString corners = wallCorners(job, ring, edge);
  if (i < r.walls.size() && !r.walls[i].name.empty()) {
    return ThingText::tr("%1 (%2)").arg(QString::fromStdString(r.walls[i].name), corners);
  }
  const geometry::Vec along = r.corners[(i + 1) % r.corners.size()] - r.corners[i];
  const geometry::Vec out = -1.0 * geometry::left(along);
  if (geometry::norm(out) <= 0.0) return corners;
  const double bearing = std::atan2(out.x, out.y) * 180.0 / std::numbers::pi;
  const int eighth = static_cast<int>(std::lround((bearing - job.plan.north_deg) / 45.0));
  const QStringList sides{ThingText::tr("north wall"), ThingText::tr("north-east wall"),
                          ThingText::tr("east wall"),  ThingText::tr("south-east wall"),
                          ThingText::tr("south wall"), ThingText::tr("south-west wall"),
                          ThingText::tr("west wall"),  ThingText::tr("north-west wall")};
  return ThingText::tr("%1 (%2)").arg(sides[((eighth % 8) + 8) % 8], corners);
}

QString thingWhere(const plan::Thing& thing, const plan::Job& job) {
  const auto at = standsOn(thing);
  if (at) return onWallText(*at, job);
  if (const auto* line = innerLineOf(thing); line != nullptr && line->size() > 1) {
    double long_m = 0.0;
    for (std::size_t i = 1; i < line->size(); ++i) {
      long_m += geometry::distance((*line)[i - 1], (*line)[i]);
    }
    const auto from = plan::nearestOnWalls(job.plan, line->front(), 0.0);
    const QString length = ThingText::tr("%1 long").arg(tapedLength(long_m, job));
    return from ? ThingText::tr("%1, %2").arg(onWallText(*from, job), length) : length;
  }
  if (const auto* outline = outlineOf(thing)) {
    return areaText(std::abs(geometry::signedArea(*outline)), job);
  }
  if (const auto* outside = std::get_if<plan::OutsideThing>(&thing);
      outside != nullptr && outside->points_m.size() == 2) {
    // By the wall it runs along, not the one its first end happens to be nearest to.
    const auto& ends = outside->points_m;
    const auto near = plan::nearestOnWalls(job.plan, geometry::lerp(ends[0], ends[1], 0.5), 0.0);
    const QString length =
        ThingText::tr("%1 long").arg(tapedLength(geometry::distance(ends[0], ends[1]), job));
    if (near && isThere(*near, job)) {
      return ThingText::tr("by %1, %2").arg(wallCorners(job, near->ring, near->edge), length);
    }
    return length;
  }
  if (const auto point = pointOf(thing)) {
    const auto near = plan::nearestOnWalls(job.plan, *point, 0.0);
    return near ? ThingText::tr("by %1").arg(onWallText(*near, job)) : QString();
  }
  return {};
}

std::vector<std::string> thingIds(const plan::Job& job) {
  std::vector<std::string> ids;
  const auto all = [&](const auto& list) {
    for (const auto& thing : list) ids.push_back(thing.id);
  };
  const plan::Plan& p = job.plan;
  all(p.openings);
  all(p.services);
  all(p.rooms);
  all(p.floor_zones);
  all(p.inner_walls);
  all(p.inner_doors);
  all(p.rising_walls);
  all(p.radiators);
  all(p.heating_pipes);
  all(p.supplies);
  all(p.fittings);
  all(p.outside);
  all(p.test_holes);
  all(p.wall_features);
  all(p.dimensions);
  all(job.house.appliances);
  return ids;
}

QString namedIn(const std::string& id, const plan::Job& job) {
  int ring = 0;
  int edge = 0;
  if (wallOf(job, id, &ring, &edge)) return wallTitle(job, ring, edge);
  const auto thing = plan::thingOf(job, id);
  if (!thing) return {};
  const QString title = thingTitle(*thing);
  const auto at = standsOn(*thing);
  if (at && isThere(*at, job)) {
    return ThingText::tr("%1, %2").arg(title, wallTitle(job, at->ring, at->edge));
  }
  // A hole by the number that stands at its sign, whatever the others are called.
  const auto& holes = job.plan.test_holes;
  const auto hole =
      std::find_if(holes.begin(), holes.end(), [&](const plan::TestHole& h) { return h.id == id; });
  if (hole != holes.end()) {
    if (!hole->name.empty()) return title;
    return ThingText::tr("%1 no. %2").arg(title).arg(hole - holes.begin() + 1);
  }
  // Several of a kind without names: by their number in the list.
  std::size_t same = 0;
  std::size_t mine = 0;
  for (const std::string& other : thingIds(job)) {
    const auto o = plan::thingOf(job, other);
    if (!o || thingTitle(*o) != title) continue;
    ++same;
    if (other == id) mine = same;
  }
  return same > 1 ? ThingText::tr("%1 no. %2").arg(title).arg(mine) : title;
}

QString saidNamed(const base::Message& message, const plan::Job& job) {
  static const QRegularExpression made(QStringLiteral("^[a-z][a-z_-]*-[0-9]+$"));
  base::Message named = message;
  for (base::Arg& arg : named.args) {
    auto* text = std::get_if<std::string>(&arg.value);
    if (text == nullptr || text->empty()) continue;
    // "w0.1, w0.2": a list of ids, or one. A name a person gave stays as it is.
    QStringList names;
    bool all = true;
    for (const QString& id : QString::fromStdString(*text).split(QStringLiteral(", "))) {
      QString name = namedIn(id.toStdString(), job);
      // An id of the program's that no part bears yet: of what was to be laid.
      if (name.isEmpty() && made.match(id).hasMatch()) name = ThingText::tr("this one");
      all = all && !name.isEmpty();
      names << name;
    }
    if (all) *text = names.join(QStringLiteral("; ")).toStdString();
  }
  return capital(said(named, job));
}

}  // namespace sumpwright::stages
