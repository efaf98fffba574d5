// Cases for what is recorded of suction, fan, pipe, discharge and price.

#include "core/plan/JobCases.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;
using support::PlanBuilder;
using Change = std::function<void(Job&)>;

/// A house with a sump, a hole, a socket and a sound pressure test.
PlanBuilder testedHouse() {
  return PlanBuilder::rectangle().sump("s", 0, 5.0).with([](Job& j) {
    j.plan.test_holes.push_back({"th", "", {3, 3}});
    j.plan.supplies.push_back({"so", "", SupplyKind::socket, {1, 1}, YesNo::unknown, ""});
    j.suction.tests.push_back(
        {"pt", "2026-03-01", "s", "vacuum (invented)", 0.02, 200.0, {{"th", 8.0, 0.5}}, ""});
  });
}

class RunCases {
 public:
  explicit RunCases(std::vector<CheckCase>& cases) : m_cases(cases) {}
  void unsound(std::string id, std::string pointer, const Change& change) {
    add(std::move(id), std::move(pointer), Gravity::unsound, change);
  }
  void unsoundIn(PlanBuilder house, std::string id, std::string pointer, const Change& change) {
    m_cases.push_back(
        {std::move(id), std::move(pointer), Gravity::unsound, house.with(change).job()});
  }
  void missing(std::string id, std::string pointer, const Change& change) {
    add(std::move(id), std::move(pointer), Gravity::missing, change);
  }

 private:
  void add(std::string id, std::string pointer, Gravity gravity, const Change& change) {
    m_cases.push_back(
        {std::move(id), std::move(pointer), gravity, testedHouse().with(change).job()});
  }
  std::vector<CheckCase>& m_cases;
};

void addSuctionCases(RunCases& cases) {
  cases.unsound("plan.suction.none", "/suction/target_pa",
                [](Job& j) { j.suction.target_pa = 0.0; });
  cases.unsound("plan.suction.none", "/suction/limit_pa",
                [](Job& j) { j.suction.limit_pa = -1.0; });
  cases.unsound("plan.suction.limit-above-target", "/suction/limit_pa", [](Job& j) {
    j.suction.target_pa = 2.0;
    j.suction.limit_pa = 2.5;
  });
  cases.unsound("plan.pit.size", "/suction/pit_l", [](Job& j) { j.suction.pit_l = 0.0; });
  cases.unsound("plan.pit.size", "/design/sumps/0/pit_l",
                [](Job& j) { j.design.sumps[0].pit_l = 501.0; });
  for (const auto& [key, part] : {std::pair("permeability_m2", &GroundGuess::permeability_m2),
                                  std::pair("fill_depth_m", &GroundGuess::fill_depth_m),
                                  std::pair("leakage_m_s_pa", &GroundGuess::leakage_m_s_pa),
                                  std::pair("joint_width_mm", &GroundGuess::joint_width_mm),
                                  std::pair("footing_m2_s_pa", &GroundGuess::footing_m2_s_pa),
                                  std::pair("exposed_m_s_pa", &GroundGuess::exposed_m_s_pa)}) {
    const std::string pointer = std::string("/suction/ground/") + key;
    cases.unsound("plan.ground.spread", pointer, [part](Job& j) {
      j.suction.ground.*part = Spread{0.2, 0.1};
    });
    cases.unsound("plan.ground.spread", pointer, [part](Job& j) {
      j.suction.ground.*part = Spread{0.0, 0.1};
    });
  }
}

void addTestCases(RunCases& cases) {
  const auto test = [](auto change) { return [change](Job& j) { change(j.suction.tests[0]); }; };
  const std::string at = "/suction/tests/0";
  cases.unsound("plan.id.twice", "/design/sumps/0/id",
                [](Job& j) { j.suction.tests[0].id = j.suction.tests[0].sump; });
  cases.unsound("plan.date.bad", at + "/date", test([](auto& t) { t.date = "2026-13-01"; }));
  cases.missing("plan.test.sump-unknown", at + "/sump", test([](auto& t) { t.sump.clear(); }));
  cases.unsound("plan.test.no-sump", at + "/sump", test([](auto& t) { t.sump = "x"; }));
  cases.unsound("plan.test.stood-off-ring", at + "/stood/chainage_m", test([](auto& t) {
                  t.stood = SumpPlace{0, 500.0, std::nullopt};
                }));
  cases.unsound("plan.test.stood-outside", at + "/stood/at_m", test([](auto& t) {
                  t.stood = SumpPlace{0, 0.0, geometry::Point{50, 50}};
                }));
  cases.unsound("plan.test.flow", at + "/flow_m3_s", test([](auto& t) { t.flow_m3_s = 0.0; }));
  cases.missing("plan.test.flow-unknown", at + "/flow_m3_s",
                test([](auto& t) { t.flow_m3_s.reset(); }));
  cases.unsound("plan.test.pit", at + "/pit_pa", test([](auto& t) { t.pit_pa = -3.0; }));
  cases.missing("plan.test.no-readings", at + "/readings",
                test([](auto& t) { t.readings.clear(); }));
  cases.unsound("plan.test.no-hole", at + "/readings/0/hole",
                test([](auto& t) { t.readings[0].hole = "x"; }));
  cases.unsound("plan.test.hole-twice", at + "/readings/1/hole",
                test([](auto& t) { t.readings.push_back(t.readings[0]); }));
  cases.unsound("plan.test.sd", at + "/readings/0/sd_pa",
                test([](auto& t) { t.readings[0].sd_pa = 0.0; }));
  cases.missing("plan.test.over-pit", at + "/readings/0/suction_pa",
                test([](auto& t) { t.readings[0].suction_pa = 201.0; }));
  cases.missing("plan.test.reading-most", at + "/readings/0/suction_pa", test([](auto& t) {
                  t.pit_pa.reset();
                  t.readings[0].suction_pa = 9600.0;
                }));
}

void addFanCases(RunCases& cases) {
  cases.unsound("plan.fan.speed", "/design/fan/speed", [](Job& j) { j.design.fan.speed = 1.5; });
  cases.unsound("plan.fan.speed", "/design/fan/speed", [](Job& j) { j.design.fan.speed = 0.0; });
  cases.unsound("plan.fan.few-points", "/design/fan/points", [](Job& j) {
    j.design.fan.points = {{0.0, 300.0, 40.0}, {0.05, 10.0, 50.0}};
  });
  cases.unsound("plan.fan.curve", "/design/fan/points/1", [](Job& j) {
    j.design.fan.points = {{0.0, 300.0, {}}, {0.01, 310.0, {}}, {0.02, 320.0, {}}};
  });
  cases.unsound("plan.fan.curve", "/design/fan/points/0", [](Job& j) {
    j.design.fan.points = {{-0.1, 300.0, {}}, {0.01, 200.0, {}}};
  });
  cases.unsound("plan.pipe.length", "/design/pipe/before_m",
                [](Job& j) { j.design.pipe.before_m = -0.1; });
  cases.unsound("plan.pipe.length", "/design/pipe/after_m",
                [](Job& j) { j.design.pipe.after_m = -0.1; });
  cases.unsound("plan.sump.fall", "/design/sumps/0/fall_deg",
                [](Job& j) { j.design.sumps[0].fall_deg = -46.0; });
  cases.unsound("plan.discharge.off-ring", "/design/sumps/0/discharge/chainage_m", [](Job& j) {
    j.design.sumps[0].discharge = Discharge{0, 99.0, 3.0};
  });
  // The courtyard's wall is a place, but no riser gets there from the hole.
  cases.unsoundIn(PlanBuilder::courtyard().sump("s", 0, 5.0), "plan.discharge.other-ring",
                  "/design/sumps/0/discharge/ring", [](Job& j) {
                    j.design.sumps[0].discharge = Discharge{1, 2.0, 3.0};
                  });
  cases.unsound("plan.sump.no-supply", "/design/sumps/0/supply",
                [](Job& j) { j.design.sumps[0].supply = "x"; });
  cases.unsound("plan.eaves.height", "/house/eaves_m", [](Job& j) { j.house.eaves_m = 0.0; });
  cases.unsound("plan.eaves.overhang", "/house/eaves_overhang_m",
                [](Job& j) { j.house.eaves_overhang_m = -0.1; });
  cases.unsound("plan.eaves.overhang", "/house/eaves_overhang_m",
                [](Job& j) { j.house.eaves_overhang_m = 3.1; });
  cases.unsound("plan.eaves.height", "/plan/rings/0/walls/2/eaves_m",
                [](Job& j) { j.plan.rings[0].walls[2].eaves_m = 51.0; });
}

void addHeatedCases(RunCases& cases) {
  cases.missing("plan.sump.heated-floor", "/design/sumps/0/at_m", [](Job& j) {
    j.design.sumps[0].kind = SumpKind::internal;
    j.design.sumps[0].at_m = Point{4, 4};
    j.plan.floor_zones[0].underfloor_heating = true;
    j.looked_for.heating = Looked::present;
  });
}

void addQuoteCases(RunCases& cases) {
  const std::string at = "/design/quote";
  const auto quote = [](auto change) { return [change](Job& j) { change(j.design.quote); }; };
  for (const auto& [key, part] : {std::pair("tax_percent", &Quote::tax_percent),
                                  std::pair("margin_percent", &Quote::margin_percent),
                                  std::pair("provisional", &Quote::provisional)}) {
    const std::string pointer = at + "/" + key;
    cases.unsound("plan.quote.not-decimal", pointer, quote([part](Quote& q) { q.*part = "1,5"; }));
    cases.unsound("plan.quote.negative", pointer, quote([part](Quote& q) { q.*part = "-1"; }));
  }
  cases.unsound("plan.running.degree-days", "/design/running/degree_days",
                [](Job& j) { j.design.running.degree_days = 30000.0; });
  cases.unsound("plan.running.share", "/design/running/house_air",
                [](Job& j) { j.design.running.house_air = 1.5; });
  cases.unsound("plan.date.bad", at + "/date", quote([](Quote& q) { q.date = "soon"; }));
  cases.unsound("plan.quote.days", at + "/valid_days", quote([](Quote& q) { q.valid_days = 0; }));
  const auto line = [&](const std::string& id, const std::string& key, QuoteLine added) {
    cases.unsound(id, at + "/lines/0/" + key, quote([added](Quote& q) { q.lines = {added}; }));
  };
  line("plan.quote.not-decimal", "quantity", {"q", "", "pipe", "1e3", "", false});
  line("plan.quote.negative", "quantity", {"q", "", "pipe", "-2", "", false});
  line("plan.quote.not-decimal", "unit_price", {"q", "", "pipe", "", "12.", false});
  line("plan.quote.nothing", "text", {"q", "", " ", "1", "2.50", false});
  cases.unsound("plan.id.twice", at + "/lines/0/id", quote([](Quote& q) {
                  q.lines = {{"s", "", "pipe", "", "", false}};
                }));
}

}  // namespace

void addRunCases(std::vector<CheckCase>& cases) {
  RunCases run(cases);
  addSuctionCases(run);
  addTestCases(run);
  addFanCases(run);
  addHeatedCases(run);
  addQuoteCases(run);
}

}  // namespace sumpwright::plan
