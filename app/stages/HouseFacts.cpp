#include "stages/HouseFacts.h"

#include <QCoreApplication>

#include "files/RuleSheets.h"
#include "plan/DesignEdits.h"
#include "plan/FactEdits.h"
#include "stages/KindWords.h"
#include "stages/WallFacts.h"

namespace sumpwright::stages {

namespace {

struct HouseFacts {
  Q_DECLARE_TR_FUNCTIONS(HouseFacts)
};

using plan::House;
using plan::Job;

FactTable<House> houseTable() {
  return FactTable<House>([](const Job& job) { return std::optional(job.house); },
                          [](const Job& job, const House& h) { return plan::setHouse(job, h); });
}

Fact ruleSheetFact(const Job& job) {
  Fact fact;
  fact.key = "/rule_sheet";
  fact.label = HouseFacts::tr("Rule sheet");
  fact.says = fact.label;
  fact.kind = FactKind::choice;
  std::vector<std::string> ids;
  for (const files::SheetEntry& entry : files::availableSheets().sheets) {
    fact.choices << QString::fromStdString(entry.title);
    ids.push_back(entry.id);
  }
  // The job's own copy, or one that is not on this machine.
  if (std::find(ids.begin(), ids.end(), job.rule_sheet) == ids.end()) {
    fact.choices << QString::fromStdString(job.rule_sheet);
    ids.push_back(job.rule_sheet);
  }
  fact.get = [ids](const Job& j) -> FactValue {
    const auto it = std::find(ids.begin(), ids.end(), j.rule_sheet);
    return it == ids.end() ? -1 : static_cast<int>(it - ids.begin());
  };
  fact.set = [ids](const Job& j, const FactValue& v) -> base::Result<Job> {
    const int* chosen = std::get_if<int>(&v);
    if (chosen == nullptr || *chosen < 0) return j;
    return plan::setRuleSheet(j, ids[static_cast<std::size_t>(*chosen)]);
  };
  return fact;
}

Fact northFact() {
  Fact fact;
  fact.key = "/plan/north_deg";
  fact.label = HouseFacts::tr("North");
  fact.says = HouseFacts::tr("True north, degrees clockwise from the top of the plan");
  fact.kind = FactKind::bearing;
  fact.required = true;
  fact.get = [](const Job& job) -> FactValue { return job.plan.north_deg; };
  fact.set = [](const Job& job, const FactValue& v) -> base::Result<Job> {
    const double* degrees = std::get_if<double>(&v);
    return degrees == nullptr ? base::Result<Job>(job) : plan::setNorth(job, *degrees);
  };
  return fact;
}

Fact photosFact() {
  Fact fact;
  fact.key = "/photos";
  fact.label = HouseFacts::tr("Photos");
  fact.says = HouseFacts::tr("Photos: files beside the job, parted by semicolons");
  fact.kind = FactKind::list;
  fact.example = HouseFacts::tr("photos/front.jpg; photos/rear.jpg");
  fact.get = [](const Job& job) -> FactValue {
    std::string text;
    for (const std::string& path : job.photos) text += (text.empty() ? "" : "; ") + path;
    return text.empty() ? FactValue() : FactValue(text);
  };
  fact.set = [](const Job& job, const FactValue& v) -> base::Result<Job> {
    std::vector<std::string> photos;
    const auto* text = std::get_if<std::string>(&v);
    const QString all = text == nullptr ? QString() : QString::fromStdString(*text);
    for (const QString& path : all.split(QLatin1Char(';'), Qt::SkipEmptyParts)) {
      if (!path.trimmed().isEmpty()) photos.push_back(path.trimmed().toStdString());
    }
    return plan::setPhotos(job, photos);
  };
  return fact;
}

FactSection jobSection(const Job& job) {
  using plan::Heading;
  FactTable<Heading> t(
      [](const Job& j) { return std::optional(plan::headingOf(j)); },
      [](const Job& j, const Heading& heading) { return plan::setHeading(j, heading); });
  t.text("/address", HouseFacts::tr("Address"), &Heading::address);
  t.text("/client", HouseFacts::tr("Client"), &Heading::client);
  t.text("/surveyor", HouseFacts::tr("Surveyed by"), &Heading::surveyor);
  Fact& date = t.text("/surveyed_on", HouseFacts::tr("Surveyed on"), &Heading::surveyed_on);
  date.says = HouseFacts::tr("Day of the survey, as 2026-03-31");
  date.example = HouseFacts::tr("2026-03-31");
  t.choice("/survey_method", HouseFacts::tr("Measured by"), &Heading::survey_method,
           surveyMethodWords());
  t.choice("/display_units", HouseFacts::tr("Shown in"), &Heading::display_units, unitWords());
  t.add(ruleSheetFact(job));
  t.add(northFact());
  t.text("/notes", HouseFacts::tr("Notes"), &Heading::notes, FactKind::note);
  t.add(photosFact());
  return {HouseFacts::tr("Job"), t.take()};
}

FactSection houseSection() {
  auto t = houseTable();
  t.whole("/house/year_built", HouseFacts::tr("Year built"), &House::year_built);
  t.choice("/house/build_type", HouseFacts::tr("Built of"), &House::build_type, buildTypeWords());
  Fact& wall = t.measure("/house/wall_thickness_m", HouseFacts::tr("Wall thickness"),
                         &House::wall_thickness_m);
  wall.says = HouseFacts::tr("Thickness of walls that state none of their own");
  wall.unknown = HouseFacts::tr("0.35 m is taken (common practice). Measure at a door.");
  t.measure("/house/cavity_m", HouseFacts::tr("Cavity"), &House::cavity_m);
  Fact layers;
  layers.key = "/house/wall_layers";
  layers.label = HouseFacts::tr("Layers");
  layers.says = HouseFacts::tr("Layers of the walls from outside to inside");
  layers.kind = FactKind::list;
  layers.example = layersExample();
  layers.get = [](const Job& job) -> FactValue {
    if (job.house.wall_layers.empty()) return {};
    return listShown(job.house.wall_layers, job);
  };
  layers.set = [](const Job& job, const FactValue& v) -> base::Result<Job> {
    auto read = listRead<plan::Layer>(v, job, job.house.wall_layers);
    if (!read) return read.problems();
    House house = job.house;
    house.wall_layers = std::move(read).value();
    return plan::setHouse(job, house);
  };
  t.add(std::move(layers));
  return {HouseFacts::tr("House and walls"), t.take()};
}

FactSection floorSection() {
  auto t = houseTable();
  t.choice("/house/barrier", HouseFacts::tr("Radon barrier"), &House::barrier, barrierWords());
  Fact& level = t.measure("/house/barrier_level_m", HouseFacts::tr("Barrier level"),
                          &House::barrier_level_m, FactKind::level);
  level.says = HouseFacts::tr("Level of the barrier above the floor (below: with a minus)");
  t.measure("/house/screed_m", HouseFacts::tr("Screed"), &House::screed_m);
  t.measure("/house/insulation_m", HouseFacts::tr("Insulation"), &House::insulation_m);
  t.measure("/house/slab_m", HouseFacts::tr("Slab"), &House::slab_m);
  t.measure("/house/hardcore_m", HouseFacts::tr("Hardcore"), &House::hardcore_m);
  t.choice("/house/fill", HouseFacts::tr("Fill"), &House::fill, fillWords()).says =
      HouseFacts::tr("What lies under the slab");
  return {HouseFacts::tr("Floor"), t.take()};
}

FactSection levelSection() {
  auto t = houseTable();
  Fact& ground = t.measure("/house/ground_level_m", HouseFacts::tr("Ground level"),
                           &House::ground_level_m, FactKind::level);
  ground.says = HouseFacts::tr("Ground outside above the floor (below: with a minus)");
  ground.unknown = HouseFacts::tr("−0.15 m is taken: one step down (common practice).");
  Fact& dpc = t.measure("/house/dpc_height_m", HouseFacts::tr("Damp-proof course"),
                        &House::dpc_height_m, FactKind::level);
  dpc.says = HouseFacts::tr("Damp-proof course above the floor");
  Fact& high = t.measure("/house/footing_top_high_m", HouseFacts::tr("Footing top, from"),
                         &House::footing_top_high_m, FactKind::level);
  high.says = HouseFacts::tr("Top of the footing at its highest, above the floor");
  Fact& low = t.measure("/house/footing_top_low_m", HouseFacts::tr("Footing top, to"),
                        &House::footing_top_low_m, FactKind::level);
  low.says = HouseFacts::tr("Top of the footing at its lowest, above the floor");
  t.text("/house/height_datum", HouseFacts::tr("Heights from"), &House::height_datum).says =
      HouseFacts::tr("Sill or threshold that heights outside are taken from");
  Fact& datum = t.measure("/house/height_datum_m", HouseFacts::tr("… its level"),
                          &House::height_datum_m, FactKind::level);
  datum.says = HouseFacts::tr("Level of that sill or threshold, above the floor");
  datum.unknown = HouseFacts::tr("Without it no height can be set out from outside.");
  t.choice("/house/eaves_wildlife", HouseFacts::tr("Bats, nests"), &House::eaves_wildlife,
           lookedWords())
      .says = HouseFacts::tr("Bats or nests at the eaves");
  Fact& eaves = t.measure("/house/eaves_m", HouseFacts::tr("Eaves"), &House::eaves_m);
  eaves.says = HouseFacts::tr("Height of the eaves above the floor");
  Fact& overhang =
      t.measure("/house/eaves_overhang_m", HouseFacts::tr("… out by"), &House::eaves_overhang_m);
  overhang.says = HouseFacts::tr("How far the eaves stand out from the wall, gutter and all");
  overhang.unknown = HouseFacts::tr("Two bends round them may be needed: offered in the quote.");
  Fact& roof = t.choice("/house/roof_lived_in", HouseFacts::tr("Roof lived in"),
                        &House::roof_lived_in, yesNoWords());
  roof.says = HouseFacts::tr("Whether somebody lives in the roof space");
  roof.unknown = HouseFacts::tr("No fan there until known; a roof window shows that it is.");
  return {HouseFacts::tr("Levels and eaves"), t.take()};
}

FactSection leaveSection() {
  using plan::Permissions;
  FactTable<Permissions> t(
      [](const Job& job) { return std::optional(job.permissions); },
      [](const Job& job, const Permissions& p) { return plan::setPermissions(job, p); });
  const auto ask = [&](const char* key, const QString& label, plan::YesNo Permissions::*part) {
    t.choice(key, label, part, yesNoWords()).unknown =
        HouseFacts::tr("Hold point: ask before any work.");
  };
  ask("/permissions/protected_structure", HouseFacts::tr("Protected structure"),
      &Permissions::protected_structure);
  ask("/permissions/conservation_area", HouseFacts::tr("Conservation area"),
      &Permissions::conservation_area);
  ask("/permissions/flats", HouseFacts::tr("Flats"), &Permissions::flats);
  ask("/permissions/tenanted", HouseFacts::tr("Tenanted"), &Permissions::tenanted);
  t.text("/permissions/consent", HouseFacts::tr("Consent"), &Permissions::consent).says =
      HouseFacts::tr("Whose leave was had, when, and where it is written");
  return {HouseFacts::tr("Leave to work"), t.take()};
}

FactSection standbySection() {
  auto t = houseTable();
  t.choice(
      "/house/standby/state", HouseFacts::tr("Standby sump"),
      [](auto& h) -> auto& { return h.standby.state; }, standbyStateWords());
  const auto found = [](const Job& job) {
    return job.house.standby.state == plan::StandbyState::found;
  };
  Fact& identity = t.choice(
      "/house/standby/identity", HouseFacts::tr("Known by"),
      [](auto& h) -> auto& { return h.standby.identity; }, standbyIdentityWords());
  identity.says = HouseFacts::tr("How it is known to be a standby sump");
  identity.applies = found;
  Fact& where = t.text(
      "/house/standby/where", HouseFacts::tr("Where"),
      [](auto& h) -> auto& { return h.standby.where; });
  where.says = HouseFacts::tr("Where its cap is");
  where.applies = found;
  Fact& test = t.text(
      "/house/standby/drain_test", HouseFacts::tr("Drain test"),
      [](auto& h) -> auto& { return h.standby.drain_test; });
  test.says = HouseFacts::tr("What was seen when it was tested");
  test.applies = found;
  Fact at;
  at.key = "/house/standby/at_m";
  at.label = HouseFacts::tr("Place");
  at.says = HouseFacts::tr("Place on the plan, along it : up it");
  at.kind = FactKind::list;
  at.example = HouseFacts::tr("3.20 : 1.05");
  at.applies = found;
  at.get = [](const Job& job) -> FactValue {
    if (!job.house.standby.at_m) return {};
    return listShown(std::vector<plan::Point>{*job.house.standby.at_m}, job);
  };
  at.set = [](const Job& job, const FactValue& v) -> base::Result<Job> {
    House house = job.house;
    std::vector<plan::Point> before;
    if (house.standby.at_m) before = {*house.standby.at_m};
    const auto read = listRead<plan::Point>(v, job, before);
    if (!read) return read.problems();
    house.standby.at_m = read->empty() ? std::nullopt : std::optional(read->front());
    return plan::setHouse(job, house);
  };
  t.add(std::move(at));
  return {HouseFacts::tr("Standby sump"), t.take()};
}

FactSection drillSection() {
  using plan::Design;
  // Each has a verb of its own: a core that no wall takes is refused, a pipe of no width too.
  FactTable<Design> t([](const Job& job) { return std::optional(job.design); },
                      [](const Job& job, const Design& d) {
                        return plan::setDrill(job, d.core_mm, d.pipe_od_mm, d.barrel_length_m);
                      });
  const auto inMetres = [&](const char* key, const QString& label,
                            std::optional<double> Design::*part) -> Fact& {
    return t.add(
        key, label, FactKind::length,
        [part](const Design& d) -> FactValue {
          return d.*part ? FactValue(*(d.*part) / 1000.0) : FactValue();
        },
        [part](Design& d, const FactValue& v) {
          const double* metres = std::get_if<double>(&v);
          d.*part = metres == nullptr ? std::nullopt : std::optional(sizeTyped_mm(*metres));
        });
  };
  const QString sheets = HouseFacts::tr("The rule sheet's is taken.");
  t.choice("/design/outlet", HouseFacts::tr("Outlet"), &Design::outlet, outletWords()).set =
      [](const Job& job, const FactValue& v) -> base::Result<Job> {
    const int* chosen = std::get_if<int>(&v);
    return chosen == nullptr ? job : plan::setOutlet(job, static_cast<plan::OutletMode>(*chosen));
  };
  inMetres("/design/core_mm", HouseFacts::tr("Core"), &Design::core_mm).unknown = sheets;
  inMetres("/design/pipe_od_mm", HouseFacts::tr("Pipe, outside"), &Design::pipe_od_mm).unknown =
      sheets;
  Fact& barrel = t.measure("/design/barrel_length_m", HouseFacts::tr("Drill barrel"),
                           &Design::barrel_length_m);
  barrel.unknown = HouseFacts::tr("0.40 m is taken (common practice).");
  return {HouseFacts::tr("Hole and pipe"), t.take()};
}

}  // namespace

std::vector<FactSection> houseSections(const plan::Job& job) {
  return {jobSection(job), houseSection(),   floorSection(), levelSection(),
          leaveSection(),  standbySection(), drillSection()};
}

}  // namespace sumpwright::stages
