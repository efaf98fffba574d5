// Study and assessment against the number of things; perimeter and clearance intervals beside GEOS
// buffers of the same things. Times are printed, with the project's own targets, never asserted.

#include <benchmark/benchmark.h>

#include <algorithm>
#include <cstdio>
#include <map>
#include <string>

#include "bench/Houses.h"
#include "build/CableAlong.h"
#include "core/build/CableLength.h"
#include "external/Geos.h"
#include "siting/Study.h"
#include "support/RandomPlan.h"

namespace sumpwright::bench {

namespace {

using external::Geos;
using siting::Study;

constexpr int kThings = 100;
constexpr int kQuarterSegments = 16;

const rules::RuleSheet& sheet() {
  static const rules::RuleSheet kSheet = support::builtInSheet("ie-practice");
  return kSheet;
}

void study(benchmark::State& state) {
  const plan::Job job = houseWith(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(Study::of(job, sheet()));
}
BENCHMARK(study)->Arg(10)->Arg(100)->Arg(1000)->Unit(benchmark::kMillisecond);

void assess(benchmark::State& state) {
  const Study made = Study::of(houseWith(static_cast<int>(state.range(0))), sheet()).value();
  const double length = made.perimeter().length_m(0);
  double s = 0.0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(made.assess({0, s}));
    s += 0.6180339887 * length;  // spread evenly over the ring
    if (s > 1e6) s = 0.0;
  }
}
BENCHMARK(assess)->Arg(10)->Arg(100)->Arg(1000)->Unit(benchmark::kMicrosecond);

void scoreAt(benchmark::State& state) {
  const Study made = Study::of(houseWith(static_cast<int>(state.range(0))), sheet()).value();
  const double length = made.perimeter().length_m(0);
  double s = 0.0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(made.scoreAt({0, s}));
    s += 0.6180339887 * length;
    if (s > 1e6) s = 0.0;
  }
}
BENCHMARK(scoreAt)->Arg(10)->Arg(100)->Arg(1000)->Unit(benchmark::kMicrosecond);

// ---- the cable along the wall ----

plan::Job wiredHouse(int things) {
  plan::Job job = houseWith(things);
  job.plan.supplies.push_back({"socket", "", plan::SupplyKind::socket, {3.0, 0.4}});
  job.plan.supplies.push_back({"spur", "", plan::SupplyKind::fused_spur, {11.6, 3.0}});
  return job;
}

/// Every place of the wall in one network, as the score asks.
void cableAlong(benchmark::State& state) {
  const Study made = Study::of(wiredHouse(static_cast<int>(state.range(0))), sheet()).value();
  for (auto _ : state) benchmark::DoNotOptimize(build::CableAlong::of(made.site()));
}
BENCHMARK(cableAlong)->Arg(10)->Arg(40)->Arg(200)->Unit(benchmark::kMillisecond);

/// The same places, each asked for itself.
void cableStepped(benchmark::State& state) {
  const Study made = Study::of(wiredHouse(static_cast<int>(state.range(0))), sheet()).value();
  const auto nodes = build::CableAlong::of(made.site()).nodes();
  for (auto _ : state) {
    for (const build::CableAlong::Node& node : nodes) {
      build::CableAsk ask;
      ask.fan = {node.ring, node.chainage_m};
      benchmark::DoNotOptimize(build::cableLength_m(made.site(), ask));
    }
  }
}
BENCHMARK(cableStepped)->Arg(10)->Arg(40)->Arg(200)->Unit(benchmark::kMillisecond);

// ---- intervals beside GEOS ----

/// Perimeter, things and the refused spans of every clearance rule, with their reasons.
void intervals(benchmark::State& state) {
  const plan::Job job = houseWith(kThings);
  for (auto _ : state) {
    const rules::Site site = rules::makeSite(perimeter::Perimeter::of(job).value(), job, sheet(),
                                             job.design.outlet, 0.127);
    std::vector<rules::FindingSpan> spans;
    for (const rules::Rule& rule : site.sheet.rules) {
      if (rule.enabled && rule.kind == rules::RuleKind::clearance) {
        rules::kClearance.spans(rule, site, spans);
      }
    }
    benchmark::DoNotOptimize(spans);
  }
}
BENCHMARK(intervals)->Unit(benchmark::kMillisecond);

/// A thing as GEOS takes it, and how far it is kept clear of.
struct Grown {
  Geos::Shape shape;
  double reach = 0.0;
};

std::vector<Grown> grownThings(const Geos& geos, const rules::Site& site) {
  std::vector<Grown> all;
  for (const rules::Rule& rule : site.sheet.rules) {
    if (!rule.enabled || rule.kind != rules::RuleKind::clearance) continue;
    const double reach = rule.needed_m->value + *rules::halfWidth_m(rule, site);
    for (const int i : site.things_of_rule[static_cast<std::size_t>(site.indexOf(rule))]) {
      const rules::Thing& thing = site.things[static_cast<std::size_t>(i)];
      for (const auto& shape : thing.shapes) {
        all.push_back({thing.area          ? geos.polygon(shape)
                       : shape.size() == 1 ? geos.point(shape[0])
                                           : geos.line(shape),
                       reach});
      }
    }
  }
  return all;
}

rules::Site benchSite() {
  const plan::Job job = houseWith(kThings);
  return rules::makeSite(perimeter::Perimeter::of(job).value(), job, sheet(), job.design.outlet,
                         0.127);
}

Geos::Shape wallOf(const Geos& geos, const rules::Site& site) {
  geometry::Polygon corners;
  for (const auto& edge : site.perimeter.edges(0)) corners.push_back(edge.from);
  return geos.outline(corners);
}

/// Which thing refuses where: the wall within each buffer. The same answer as ours, to the buffer's
/// error.
void geosEach(benchmark::State& state) {
  const Geos geos;
  const rules::Site site = benchSite();
  for (auto _ : state) {
    const auto wall = wallOf(geos, site);
    for (const Grown& thing : grownThings(geos, site)) {
      benchmark::DoNotOptimize(
          geos.intersection(wall, geos.buffer(thing.shape, thing.reach, kQuarterSegments)));
    }
  }
}
BENCHMARK(geosEach)->Unit(benchmark::kMillisecond);

/// Where the wall is free, without saying of what: the wall less the union of all buffers.
void geosUnion(benchmark::State& state) {
  const Geos geos;
  const rules::Site site = benchSite();
  for (auto _ : state) {
    std::vector<Geos::Shape> buffers;
    for (const Grown& thing : grownThings(geos, site)) {
      buffers.push_back(geos.buffer(thing.shape, thing.reach, kQuarterSegments));
    }
    benchmark::DoNotOptimize(geos.difference(wallOf(geos, site), geos.unite(buffers)));
  }
}
BENCHMARK(geosUnion)->Unit(benchmark::kMillisecond);

/// Keeps the processor's times to set them side by side: what runs beside a bench slows the clock.
class Reporter final : public benchmark::ConsoleReporter {
 public:
  void ReportRuns(const std::vector<Run>& runs) override {
    for (const Run& run : runs) {
      if (!run.error_occurred)
        seconds[run.benchmark_name()] =
            run.cpu_accumulated_time / static_cast<double>(run.iterations);
    }
    ConsoleReporter::ReportRuns(runs);
  }
  std::map<std::string, double> seconds;
};

void printComparison(const std::map<std::string, double>& seconds) {
  const auto time = [&](const char* name) {
    const auto found = seconds.find(name);
    return found == seconds.end() ? 0.0 : found->second;
  };
  if (time("assess/100") > 0.0) {
    std::printf("assessment, 100 things: %.1f us (target: under 50)\n", 1e6 * time("assess/100"));
  }
  if (time("intervals") > 0.0 && time("geosEach") > 0.0 && time("geosUnion") > 0.0) {
    const double geos = std::min(time("geosEach"), time("geosUnion"));
    std::printf(
        "GEOS %s, %d segments a quarter, %d things: %.2f ms a buffer each, %.2f ms their "
        "union; intervals %.3f ms: %.0f times faster than the quicker (target: 20)\n",
        Geos::version().c_str(), kQuarterSegments, kThings, 1e3 * time("geosEach"),
        1e3 * time("geosUnion"), 1e3 * time("intervals"), geos / time("intervals"));
  }
}

}  // namespace

}  // namespace sumpwright::bench

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
  sumpwright::bench::Reporter reporter;
  benchmark::RunSpecifiedBenchmarks(&reporter);
  sumpwright::bench::printComparison(reporter.seconds);
  return 0;
}
