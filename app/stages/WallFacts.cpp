#include "stages/WallFacts.h"

#include <QCoreApplication>
#include <algorithm>

#include "perimeter/Perimeter.h"
#include "plan/WallEdits.h"
#include "stages/KindWords.h"
#include "stages/SurveyText.h"
#include "stages/ThingText.h"
#include "tools/ListText.h"

namespace sumpwright::stages {

namespace {

struct WallFacts {
  Q_DECLARE_TR_FUNCTIONS(WallFacts)
};

using plan::Wall;

base::Result<plan::Job> putWall(const plan::Job& job, const Wall& wall) {
  int ring = -1;
  int edge = -1;
  wallOf(job, wall.id, &ring, &edge);
  return plan::setWall(job, ring, edge, wall);
}

template <class T>
Fact wallList(const std::string& id, std::string key, const QString& label, const QString& example,
              std::vector<T> Wall::*part) {
  Fact fact;
  fact.key = std::move(key);
  fact.label = label;
  fact.says = label;
  fact.kind = FactKind::list;
  fact.example = example;
  fact.get = [id, part](const plan::Job& job) -> FactValue {
    const auto wall = wallOf(job, id);
    if (!wall || ((*wall).*part).empty()) return {};
    return listShown((*wall).*part, job);
  };
  fact.set = [id, part](const plan::Job& job, const FactValue& v) -> base::Result<plan::Job> {
    auto wall = wallOf(job, id);
    if (!wall) return job;
    auto read = listRead<T>(v, job, (*wall).*part);
    if (!read) return read.problems();
    (*wall).*part = std::move(read).value();
    return putWall(job, *wall);
  };
  return fact;
}

template <class T>
tools::ListReading<T> readListOf(std::string_view text, tools::BareUnit bare);
template <>
tools::ListReading<plan::Layer> readListOf(std::string_view text, tools::BareUnit bare) {
  return tools::readLayers(text, bare);
}
template <>
tools::ListReading<plan::GroundPoint> readListOf(std::string_view text, tools::BareUnit bare) {
  return tools::readGround(text, bare);
}
template <>
tools::ListReading<plan::Gap> readListOf(std::string_view text, tools::BareUnit bare) {
  return tools::readGaps(text, bare);
}
template <>
tools::ListReading<plan::Point> readListOf(std::string_view text, tools::BareUnit bare) {
  return tools::readPoints(text, bare);
}

/// Entries at either end of a list that read as before are what they were: what is shown is
/// rounded.
template <class T>
void keepUntouched(const std::vector<T>& before, std::vector<T>& now, const plan::Job& job) {
  const auto alike = [&](const T& a, const T& b) {
    return listShown(std::vector<T>{a}, job) == listShown(std::vector<T>{b}, job);
  };
  const std::size_t most = std::min(before.size(), now.size());
  std::size_t kept = 0;
  for (; kept < most && alike(before[kept], now[kept]); ++kept) now[kept] = before[kept];
  for (std::size_t k = 1; kept + k <= most; ++k) {
    const T& was = before[before.size() - k];
    T& is = now[now.size() - k];
    if (!alike(was, is)) break;
    is = was;
  }
}

}  // namespace

template <class T>
std::string listShown(const std::vector<T>& list, const plan::Job& job) {
  return tools::listText(list, [&](double m) { return typedLength(m, job).toStdString(); });
}

template <class T>
base::Result<std::vector<T>> listRead(const FactValue& value, const plan::Job& job,
                                      const std::vector<T>& before) {
  const auto* text = std::get_if<std::string>(&value);
  if (text == nullptr) return std::vector<T>();
  const bool feet = job.display_units == plan::DisplayUnits::imperial;
  auto read = readListOf<T>(*text, feet ? tools::BareUnit::foot : tools::BareUnit::metre);
  if (read.ok()) {
    keepUntouched(before, read.entries, job);
    return std::move(read.entries);
  }
  return base::Problem{base::Message("place.not-read", {base::text("entry", read.wrong)}), "",
                       base::Gravity::unsound};
}

template std::string listShown(const std::vector<plan::Layer>&, const plan::Job&);
template std::string listShown(const std::vector<plan::GroundPoint>&, const plan::Job&);
template std::string listShown(const std::vector<plan::Gap>&, const plan::Job&);
template std::string listShown(const std::vector<plan::Point>&, const plan::Job&);
template base::Result<std::vector<plan::Layer>> listRead(const FactValue&, const plan::Job&,
                                                         const std::vector<plan::Layer>&);
template base::Result<std::vector<plan::GroundPoint>> listRead(
    const FactValue&, const plan::Job&, const std::vector<plan::GroundPoint>&);
template base::Result<std::vector<plan::Gap>> listRead(const FactValue&, const plan::Job&,
                                                       const std::vector<plan::Gap>&);
template base::Result<std::vector<plan::Point>> listRead(const FactValue&, const plan::Job&,
                                                         const std::vector<plan::Point>&);

QString layersExample() { return WallFacts::tr("brick 0.10; cavity 0.10; block 0.10"); }
QString groundExample() { return WallFacts::tr("-0.15 at 0 paving; -0.30 at 4.20"); }
QString gapsExample() { return WallFacts::tr("1.20 to 2.00"); }
QString pointsExample() { return WallFacts::tr("3.20 : 1.05; 3.20 : 4.00"); }

std::vector<Fact> wallFacts(const std::string& id) {
  // First what decides whether a place can be called clear.
  FactTable<Wall> t([id](const plan::Job& job) { return wallOf(job, id); }, putWall);
  t.choice("foundation", WallFacts::tr("Stands on"), &Wall::foundation, foundationWords());
  Fact& owner = t.choice("ground", WallFacts::tr("Ground"), &Wall::ground, groundOwnerWords());
  owner.says = WallFacts::tr("Whose ground lies outside");
  Fact& free = t.measure("free_depth_m", WallFacts::tr("Free room outside"), &Wall::free_depth_m);
  free.says = WallFacts::tr("Free working depth outside, square to the wall");
  Fact& side = t.choice("elevation", WallFacts::tr("Side"), &Wall::elevation, elevationWords());
  side.says = WallFacts::tr("Which side of the house");
  Fact& thick = t.measure("thickness_m", WallFacts::tr("Thickness"), &Wall::thickness_m);
  thick.says = WallFacts::tr("Thickness, outside face to inside face");
  thick.unknown = WallFacts::tr("The house's is taken; not known either, 0.35 m.");
  Fact& level = t.measure("ground_level_m", WallFacts::tr("Ground level"), &Wall::ground_level_m,
                          FactKind::level);
  level.says = WallFacts::tr("Ground outside, above the floor (below: with a minus)");
  level.unknown = WallFacts::tr("The house's is taken.");
  t.add(wallList(id, "ground_points", WallFacts::tr("Ground along it"), groundExample(),
                 &Wall::ground_points))
      .says = WallFacts::tr("Levels along the wall: level at place, surface");
  Fact& layers =
      t.add(wallList(id, "layers", WallFacts::tr("Layers"), layersExample(), &Wall::layers));
  layers.says = WallFacts::tr("Layers from outside to inside");
  layers.unknown = WallFacts::tr("Those of the house are taken.");
  Fact& below = t.choice("party_below", WallFacts::tr("Fill next door"), &Wall::party_below,
                         partyBelowWords());
  below.says = WallFacts::tr("Party wall: whether the fill under the floor goes on next door");
  below.unknown = WallFacts::tr("Both are looked at, and the worse is told.");
  Fact& eaves = t.measure("eaves_m", WallFacts::tr("Eaves"), &Wall::eaves_m);
  eaves.says = WallFacts::tr("Height of the eaves above the floor");
  eaves.unknown = WallFacts::tr("The house's is taken.");
  t.text("name", WallFacts::tr("Name"), &Wall::name).unknown =
      WallFacts::tr("Called by the way it faces.");
  t.choice("kind", WallFacts::tr("Wall"), &Wall::kind, wallKindWords());
  return t.take();
}

}  // namespace sumpwright::stages
