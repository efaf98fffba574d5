#include "suction/Fit.h"

#include <algorithm>
#include <cmath>

#include "suction/Sensitivity.h"

namespace sumpwright::suction {

namespace {

constexpr double kTellsNothing = 0.7;   // sd of a logarithm: a factor of 4 either way (own figure)
constexpr double kTiedTogether = 0.97;  // correlation (own figure)
constexpr double kNormal95 = 1.959964;
constexpr int kFewest = 2;
constexpr double kMisfit = 9.0;  // readings lie three of their errors off on average (own figure)

Banded banded(double value, double sd_ln, double times) {
  const double factor = std::exp(std::min(50.0, times * sd_ln));
  return {value, value / factor, value * factor, sd_ln};
}

class GroundFit {
 public:
  GroundFit(const SuctionModel& model, std::vector<Measured> tests, const FitOptions& options)
      : m_model(model),
        m_tests(std::move(tests)),
        m_options(options),
        m_network(networkOf(model, options.cell_m, true)),
        m_factoriser(m_network) {
    for (std::size_t t = 0; t < m_tests.size(); ++t) takeTest(t);
  }

  Fit fitted() {
    Fit fit;
    for (const std::string& test : m_sumps_off_floor) {
      fit.statements.emplace_back("suction.fit.sump-off-floor",
                                  std::vector{base::text("test", test)});
    }
    if (m_runs.empty()) return fit;
    if (static_cast<int>(m_readings.size()) < kFewest) {
      fit.state = FitState::too_few;
      fit.statements.emplace_back("suction.fit.too-few");
      return fit;
    }
    std::vector<bool> all(m_readings.size(), true);
    const LeastSquaresResult result = solve(all, std::vector<double>(parameters(), 0.0));
    if (result.state == LeastSquaresState::no_answer) return fit;
    report(result, fit);
    findOutlier(result, fit);
    state(fit);
    return fit;
  }

 private:
  static constexpr double kTrialFlow_m3_s = 0.01;

  /// A test with a place in the floor.
  struct Run {
    std::size_t test = 0;
    Port port;
    double flow_m3_s = 0.0;
    std::vector<double> suction;  ///< by cell, of the last values
  };
  struct Hole {
    std::size_t run = 0;
    Reading reading;
  };

  void takeTest(std::size_t t) {
    const Measured& test = m_tests[t];
    auto port = portAt(m_network, test.sink.at, test.sink.radius_m);
    if (!port) return void(m_sumps_off_floor.push_back(test.name));
    m_runs.push_back({t, std::move(*port), test.flow_m3_s.value_or(kTrialFlow_m3_s), {}});
    const std::vector<double> still(m_network.cells.size(), 0.0);
    for (const Reading& reading : test.readings) {
      if (sampleAt(m_network, still, reading.at)) {
        m_readings.push_back({m_runs.size() - 1, reading});
      } else {
        m_off_floor.push_back(reading.hole);
      }
    }
  }

  std::size_t parameters() const { return m_options.fit_joints ? 3 : 2; }

  Scales scalesOf(const std::vector<double>& theta) const {
    Scales scales;
    scales.transmissivity = std::exp(theta[0]);
    scales.leakage = std::exp(theta[1]);
    // Joints not fitted go with the leakage they cannot be told from.
    scales.edges = scales.outdoors = std::exp(theta[m_options.fit_joints ? 2 : 1]);
    return scales;
  }

  LeastSquaresResult solve(const std::vector<bool>& used, std::vector<double> start) {
    std::vector<Datum> data;
    std::vector<Hole> holes;
    for (std::size_t i = 0; i < m_readings.size(); ++i) {
      if (!used[i]) continue;
      const Reading& reading = m_readings[i].reading;
      data.push_back(
          {reading.suction_pa, reading.sd_pa.value_or(readingSd_pa(reading.suction_pa))});
      holes.push_back(m_readings[i]);
    }
    LeastSquaresOptions options;
    options.priors.assign(parameters(), {0.0, m_options.prior_sd});
    options.most_steps = m_options.most_steps;
    const Forward forward = [&](const std::vector<double>& theta, std::vector<double>& values,
                                std::vector<double>& derivatives) {
      return valuesAt(theta, holes, values, derivatives);
    };
    return leastSquares(forward, data, std::move(start), options);
  }

  bool valuesAt(const std::vector<double>& theta, const std::vector<Hole>& holes,
                std::vector<double>& values, std::vector<double>& derivatives) {
    const Scales scales = scalesOf(theta);
    if (m_factoriser.factor(m_network, scales, m_factor) != FactorState::made) return false;
    values.assign(holes.size(), 0.0);
    derivatives.assign(holes.size() * parameters(), 0.0);
    for (std::size_t r = 0; r < m_runs.size(); ++r) {
      Draw draw = m_runs[r].port.weights;
      for (auto& [cell, flow] : draw) flow *= m_runs[r].flow_m3_s;
      m_runs[r].suction = m_factor.solve(draw);
      const auto changes = changesOf(scales, m_runs[r].suction);
      for (std::size_t h = 0; h < holes.size(); ++h) {
        if (holes[h].run != r) continue;
        const Point at = holes[h].reading.at;
        values[h] = *sampleAt(m_network, m_runs[r].suction, at);
        for (std::size_t p = 0; p < parameters(); ++p) {
          derivatives[h * parameters() + p] = *sampleAt(m_network, changes[p], at);
        }
      }
    }
    return true;
  }

  /// d suction / d parameter, by cell.
  std::vector<std::vector<double>> changesOf(const Scales& scales,
                                             const std::vector<double>& suction) const {
    std::vector<std::vector<double>> changes{
        sensitivity(m_network, m_factor, scales, suction, GroundPart::transmissivity),
        sensitivity(m_network, m_factor, scales, suction, GroundPart::leakage)};
    auto joints = sensitivity(m_network, m_factor, scales, suction, GroundPart::joints);
    if (m_options.fit_joints) {
      changes.push_back(std::move(joints));
    } else {
      for (std::size_t c = 0; c < joints.size(); ++c) changes[1][c] += joints[c];
    }
    return changes;
  }

  void report(const LeastSquaresResult& result, Fit& fit) {
    const std::size_t p = parameters();
    fit.state =
        result.state == LeastSquaresState::settled ? FitState::settled : FitState::not_settled;
    fit.steps = result.steps;
    fit.chi2 = result.chi2;
    fit.scales = scalesOf(result.theta);
    const int degrees = static_cast<int>(m_readings.size()) - static_cast<int>(p);
    // The errors of gauges are stated, not told from the scatter, so that it takes the normal
    // distribution: Student's, which knows nothing of them, would make a third hole widen the band
    // of two. Readings that scatter more than they should widen it by as much (Birge 1932, from
    // memory); such as scatter less do not narrow it.
    const double spread = degrees > 0 ? std::sqrt(std::max(1.0, result.chi2 / degrees)) : 1.0;
    const double times = kNormal95 * spread;
    const auto covariance = [&](std::size_t k, std::size_t l) {
      return result.covariance[k * p + l];
    };
    const double sd_t = std::sqrt(covariance(0, 0));
    const double sd_l = std::sqrt(covariance(1, 1));
    const double sd_lambda =
        0.5 *
        std::sqrt(std::max(0.0, covariance(0, 0) + covariance(1, 1) - 2.0 * covariance(0, 1)));
    const double t = m_model.layer.transmissivity_m3_s_pa * fit.scales.transmissivity;
    const double l = m_model.layer.leak_ground_m_s_pa * fit.scales.leakage;
    fit.transmissivity_m3_s_pa = banded(t, sd_t, times);
    fit.leak_m_s_pa = banded(l, sd_l, times);
    fit.lambda_m = banded(l > 0.0 ? std::sqrt(t / l) : 0.0, sd_lambda, times);
    fit.correlation = covariance(0, 1) / (sd_t * sd_l);
    if (m_options.fit_joints) {
      fit.joints = banded(fit.scales.edges, std::sqrt(covariance(2, 2)), times);
    }
    for (std::size_t i = 0; i < m_readings.size(); ++i) {
      const Reading& reading = m_readings[i].reading;
      const double sd = reading.sd_pa.value_or(readingSd_pa(reading.suction_pa));
      fit.holes.push_back({reading.hole, m_runs[m_readings[i].run].test, reading.suction_pa,
                           result.values[i], (reading.suction_pa - result.values[i]) / sd});
    }
    takePit(fit);
  }

  void takePit(Fit& fit) const {
    for (const Run& run : m_runs) {
      const Measured& test = m_tests[run.test];
      if (!test.pit_pa || !test.flow_m3_s) continue;
      fit.pit_excess_pa = *test.pit_pa - readAt(run.port, run.suction) -
                          run.flow_m3_s * ownTerm(run.port, fit.scales);
      return;
    }
  }

  /// The hole that the others contradict most: fitted without it, and what they say of it compared
  /// with what was read. With four holes and more; fewer cannot outvote one.
  void findOutlier(const LeastSquaresResult& whole, Fit& fit) {
    if (m_readings.size() < parameters() + 2) return;
    double worst = m_options.outlier;
    std::optional<std::size_t> which;
    for (std::size_t i = 0; i < m_readings.size(); ++i) {
      std::vector<bool> used(m_readings.size(), true);
      used[i] = false;
      const LeastSquaresResult others = solve(used, whole.theta);
      if (others.state == LeastSquaresState::no_answer) continue;
      const double off = offFrom(others, m_readings[i]);
      // It must be the odd one, not only unlike the rest: the others agree among themselves.
      const auto degrees = static_cast<double>(m_readings.size() - 1 - parameters());
      const bool agree = others.chi2 <= 4.0 * std::max(1.0, degrees);
      if (!agree || off < worst) continue;
      worst = off;
      which = i;
    }
    if (!which) return;
    fit.holes[*which].outlier = true;
    fit.statements.emplace_back("suction.fit.outlier",
                                std::vector{base::text("hole", m_readings[*which].reading.hole)});
  }

  double offFrom(const LeastSquaresResult& others, const Hole& hole) {
    const Reading& reading = hole.reading;
    std::vector<double> value;
    std::vector<double> slope;
    if (!valuesAt(others.theta, {hole}, value, slope)) return 0.0;
    const double sd = reading.sd_pa.value_or(readingSd_pa(value[0]));
    double variance = sd * sd;
    const std::size_t p = parameters();
    for (std::size_t k = 0; k < p; ++k) {
      for (std::size_t l = 0; l < p; ++l)
        variance += slope[k] * others.covariance[k * p + l] * slope[l];
    }
    return std::abs(reading.suction_pa - value[0]) / std::sqrt(variance);
  }

  void state(Fit& fit) const {
    fit.flow_known = m_tests.front().flow_m3_s.has_value();
    if (!fit.flow_known) fit.statements.emplace_back("suction.fit.no-flow");
    for (const std::string& hole : m_off_floor) {
      fit.statements.emplace_back("suction.fit.off-floor", std::vector{base::text("hole", hole)});
    }
    if (fit.state == FitState::not_settled) fit.statements.emplace_back("suction.fit.not-settled");
    const double degrees =
        static_cast<double>(m_readings.size()) - static_cast<double>(parameters());
    if (degrees > 0.0 && fit.chi2 > kMisfit * degrees) {
      fit.statements.emplace_back("suction.fit.misfit");
    }
    if (m_readings.size() <= parameters()) fit.statements.emplace_back("suction.fit.few");
    if (fit.transmissivity_m3_s_pa.sd_ln > kTellsNothing) {
      fit.statements.emplace_back("suction.fit.no-transmissivity");
    }
    if (fit.leak_m_s_pa.sd_ln > kTellsNothing)
      fit.statements.emplace_back("suction.fit.no-leakage");
    if (std::abs(fit.correlation) > kTiedTogether) fit.statements.emplace_back("suction.fit.tied");
    if (fit.joints && fit.joints->sd_ln > kTellsNothing) {
      fit.statements.emplace_back("suction.fit.no-joints");
    }
  }

  const SuctionModel& m_model;
  std::vector<Measured> m_tests;
  const FitOptions& m_options;
  Network m_network;
  Factoriser m_factoriser;
  Factor m_factor;
  std::vector<Run> m_runs;
  std::vector<Hole> m_readings;
  std::vector<std::string> m_off_floor;
  std::vector<std::string> m_sumps_off_floor;  ///< names of tests
};

/// Numbers, within those given, of the tests that are fitted together.
std::vector<std::size_t> usableOf(const std::vector<Measured>& tests) {
  std::vector<std::size_t> usable;
  for (std::size_t t = 0; t < tests.size(); ++t) {
    if (tests[t].flow_m3_s) usable.push_back(t);
  }
  if (!usable.empty() || tests.empty()) return usable;
  const auto most = std::max_element(tests.begin(), tests.end(), [](const auto& a, const auto& b) {
    return a.readings.size() < b.readings.size();
  });
  return {static_cast<std::size_t>(most - tests.begin())};
}

}  // namespace

double readingSd_pa(double suction_pa) { return std::hypot(0.05 * suction_pa, 0.3); }

Fit fitGround(const SuctionModel& model, const Measured& measured, const FitOptions& options) {
  if (!checkModel(model).empty()) return {};
  return GroundFit(model, {measured}, options).fitted();
}

Fit fitGround(const SuctionModel& model, const std::vector<Measured>& tests,
              const FitOptions& options) {
  if (!checkModel(model).empty()) return {};
  const std::vector<std::size_t> usable = usableOf(tests);
  if (usable.empty()) return {};
  std::vector<Measured> taken;
  for (const std::size_t t : usable) taken.push_back(tests[t]);
  Fit fit = GroundFit(model, std::move(taken), options).fitted();
  for (Misfit& hole : fit.holes) hole.test = usable[hole.test];
  if (usable.size() < tests.size()) {
    fit.statements.emplace_back(
        "suction.fit.left-out",
        std::vector{base::count("tests", static_cast<std::int64_t>(tests.size() - usable.size()))});
  }
  return fit;
}

}  // namespace sumpwright::suction
