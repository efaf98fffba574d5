#include "suction/Fit.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "suction/FitForward.h"

namespace sumpwright::suction {

namespace {

constexpr double kTellsNothing = 0.7;   // sd of a logarithm: a factor of 4 either way (own figure)
constexpr double kTiedTogether = 0.97;  // correlation (own figure)
constexpr double kNormal95 = 1.959964;
constexpr int kFewest = 2;
constexpr double kTold = 2.0;             // of the parameters: the others are as their priors
constexpr double kUnsuited = 4.0;         // readings lie two of their errors off (own figure)
constexpr double kContradictory = 100.0;  // ten of them (own figure)
// Where to begin and which hole is odd is told as well in coarse cells and to a hundredth (own
// figures).
constexpr double kSearch_m = 0.25;
constexpr int kSearchSteps = 25;
constexpr double kSearchGain = 1e-2;
constexpr double kClearly = 6.0;  // twenty times likelier (own figure; 2 ln 20)
constexpr double kAtEase = 2.0;   // no reading so far off: none is the odd one (own figure)

using FitLogs = std::vector<double>;

Banded banded(double value, double sd_ln, double times) {
  const double factor = std::exp(std::min(50.0, times * sd_ln));
  return {value, value / factor, value * factor, sd_ln};
}

double degreesOf(std::size_t readings) {
  return std::max(1.0, static_cast<double>(readings) - kTold);
}

class GroundFit {
 public:
  GroundFit(const SuctionModel& model, std::vector<Measured> tests, const FitOptions& options)
      : m_model(model), m_options(options), m_ground(model, std::move(tests), options.cell_m) {
    setLimits();
    if (options.cell_m >= kSearch_m) return;
    m_coarse.emplace(model, m_ground.tests(), kSearch_m);
    const bool alike = m_coarse->runs().size() == m_ground.runs().size() &&
                       m_coarse->holes().size() == m_ground.holes().size();
    if (!alike) m_coarse.reset();
  }

  Fit fitted() {
    Fit fit;
    fit.statements = m_ground.leftOut();
    if (m_ground.runs().empty()) return fit;
    if (static_cast<int>(holes().size()) < kFewest) {
      fit.state = FitState::too_few;
      fit.statements.emplace_back("suction.fit.too-few");
      return fit;
    }
    LeastSquaresResult result = solve(m_ground, m_limits, holes(), FitLogs(Narrowed::kParts, 0.0));
    std::optional<std::size_t> odd;
    if (!isAtEase(result)) {
      const LeastSquaresResult found = best(holes());
      odd = oddOne(found);
      LeastSquaresOptions limits = m_limits;
      // Of what contradicts itself nothing is kept but that it does.
      const bool hopeless = !odd && found.chi2 > 2.0 * kContradictory * degreesOf(holes().size());
      if (hopeless) limits.most_steps = kSearchSteps / 5;
      result =
          solve(m_ground, limits, odd ? without(*odd) : holes(), odd ? m_rest.theta : found.theta);
    }
    if (result.state == LeastSquaresState::no_answer) return fit;
    report(result, odd, fit);
    state(fit);
    return fit;
  }

 private:
  struct Suspect {
    std::size_t hole = 0;
    LeastSquaresResult rest;  ///< fitted without it
  };

  const std::vector<FitHole>& holes() const { return m_ground.holes(); }

  void setLimits() {
    const FitLeaks& leaks = m_ground.leaks();
    const double t = m_model.layer.transmissivity_m3_s_pa;
    const double leak = leaks.area_m2 > 0.0 ? leaks.all() / leaks.area_m2 : 0.0;
    constexpr double kPriorSds = 3.0;
    const auto about = [](double value, const Range& can_be) {
      if (!(value > 0.0)) return Bounds{-Narrowed::kWide, Narrowed::kWide};
      return Bounds{std::min(0.0, std::log(can_be.low / value)),
                    std::max(0.0, std::log(can_be.high / value))};
    };
    const auto within = [](double sd) { return Bounds{-kPriorSds * sd, kPriorSds * sd}; };
    m_limits.bounds = {about(t, kTransmissivities_m3_s_pa), about(leak, kLeakages_m_s_pa),
                       within(m_options.split_sd), within(m_options.footing_sd)};
    m_limits.priors = {{0.0, m_options.prior_sd},
                       {0.0, m_options.prior_sd},
                       {0.0, m_options.split_sd},
                       {0.0, m_options.footing_sd}};
    m_limits.most_steps = m_options.most_steps;
    // A limit bends what the steps take for straight: they grow short long before they are right.
    const bool limits = std::any_of(holes().begin(), holes().end(),
                                    [](const FitHole& hole) { return hole.datum().below; });
    m_limits.no_gain = limits ? 1e-6 : 1e-9;
  }

  LeastSquaresResult solve(FitForward& ground, const LeastSquaresOptions& limits,
                           const std::vector<FitHole>& used, FitLogs start) {
    std::vector<Datum> data;
    for (const FitHole& hole : used) data.push_back(hole.datum());
    const Forward forward = [&](const FitLogs& logs, std::vector<double>& values,
                                std::vector<double>& derivatives) {
      return ground.valuesAt(logs, used, values, derivatives);
    };
    return leastSquares(forward, data, std::move(start), limits);
  }

  FitForward& searched() { return m_coarse ? *m_coarse : m_ground; }

  /// Roughly, from the model's ground and from others: a far hole without suction has no slope to
  /// go by.
  LeastSquaresResult best(const std::vector<FitHole>& used) {
    LeastSquaresOptions limits = m_limits;
    limits.most_steps = kSearchSteps;
    limits.no_gain = kSearchGain;
    constexpr double kAside = 3.0;
    LeastSquaresResult found;
    for (const auto& [fill, leak] :
         std::initializer_list<std::pair<double, double>>{{0.0, 0.0},
                                                          {kAside, -kAside},
                                                          {kAside, kAside},
                                                          {-kAside, -kAside},
                                                          {-kAside, kAside}}) {
      LeastSquaresResult other = solve(searched(), limits, used, {fill, leak, 0.0, 0.0});
      if (other.state == LeastSquaresState::no_answer) continue;
      const bool none = found.state == LeastSquaresState::no_answer;
      if (none || other.cost < found.cost) found = std::move(other);
    }
    if (found.theta.empty()) found.theta.assign(Narrowed::kParts, 0.0);
    return found;
  }

  std::vector<FitHole> without(std::size_t odd) const {
    std::vector<FitHole> rest = holes();
    rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(odd));
    return rest;
  }

  /// The hole that the others contradict: fitted without it, and what they say of it compared with
  /// what was read. Of several the one without which the rest goes best together, if it does so
  /// clearly: of three readings any two may go together, and a wrong one is not told from a right.
  std::optional<std::size_t> oddOne(const LeastSquaresResult& whole) {
    if (static_cast<int>(holes().size()) <= kFewest) return std::nullopt;
    std::vector<Suspect> suspects;
    for (std::size_t i = 0; i < holes().size(); ++i) {
      LeastSquaresResult others = best(without(i));
      if (others.state == LeastSquaresState::no_answer) continue;
      if (others.cost >= whole.cost - m_options.outlier * m_options.outlier) continue;
      // It must be the odd one, not only unlike the rest: the others agree among themselves.
      if (others.chi2 > kUnsuited * degreesOf(holes().size() - 1)) continue;
      if (offFrom(others, holes()[i]) < m_options.outlier) continue;
      suspects.push_back({i, std::move(others)});
    }
    if (suspects.empty()) return std::nullopt;
    std::sort(suspects.begin(), suspects.end(),
              [](const Suspect& a, const Suspect& b) { return a.rest.cost < b.rest.cost; });
    for (const Suspect& one : suspects) {
      if (one.rest.cost < suspects.front().rest.cost + kClearly) m_suspects.push_back(one.hole);
    }
    if (m_suspects.size() > 1) return std::nullopt;
    m_suspects.clear();
    m_rest = std::move(suspects.front().rest);
    return suspects.front().hole;
  }

  /// Neither a reading nor what was thought of the ground before is far off.
  bool isAtEase(const LeastSquaresResult& result) const {
    if (result.state != LeastSquaresState::settled) return false;
    for (std::size_t i = 0; i < holes().size(); ++i) {
      if (std::abs(residualOf(holes()[i].datum(), result.values[i]).root) > kAtEase) return false;
    }
    return result.cost - result.chi2 <= kAtEase * kAtEase;
  }

  /// By how many of their errors a reading and what the others say of it differ, as factors: what
  /// is told of a far hole is a factor, and a slip of the pen is one too.
  double offFrom(const LeastSquaresResult& others, const FitHole& hole) {
    std::vector<double> value;
    std::vector<double> slope;
    if (!searched().valuesAt(others.theta, {hole}, value, slope)) return 0.0;
    const double told = std::max(value[0], kGaugeStep_pa);
    const double sd = hole.reading.sd_pa.value_or(readingSd_pa(told));
    double variance = sd * sd;
    const std::size_t p = Narrowed::kParts;
    for (std::size_t k = 0; k < p; ++k) {
      for (std::size_t l = 0; l < p; ++l) {
        variance += slope[k] * others.covariance[k * p + l] * slope[l];
      }
    }
    const double read = std::max(hole.reading.suction_pa, kGaugeStep_pa);
    return std::abs(std::log(read / told)) * told / std::sqrt(variance);
  }

  void report(const LeastSquaresResult& result, std::optional<std::size_t> odd, Fit& fit) {
    fit.state =
        result.state == LeastSquaresState::settled ? FitState::settled : FitState::not_settled;
    fit.steps = result.steps;
    fit.chi2 = result.chi2;
    fit.cost = result.cost + (odd ? m_options.outlier * m_options.outlier : 0.0);
    fit.scales = m_ground.scalesAt(result.theta);
    fit.flow_known = m_ground.tests().front().flow_m3_s.has_value();
    takeNarrowed(result, holes().size() - (odd ? 1 : 0), fit);
    takeBands(fit);
    std::vector<double> values;
    std::vector<double> slopes;
    if (!m_ground.valuesAt(result.theta, holes(), values, slopes)) return;
    for (std::size_t i = 0; i < holes().size(); ++i) {
      const FitHole& hole = holes()[i];
      const Residual off = residualOf(hole.datum(), values[i]);
      fit.holes.push_back({hole.reading.hole, m_ground.runs()[hole.run].test,
                           hole.reading.suction_pa, values[i], -off.root, odd == i});
    }
    takePit(fit);
  }

  /// The errors of gauges are stated, not told from the scatter, so that it takes the normal
  /// distribution: Student's, which knows nothing of them, would make a third hole widen the band
  /// of two. Readings that scatter more than they should widen it by as much (Birge 1932, from
  /// memory), but to no more than was known before; such as scatter less do not narrow it.
  void takeNarrowed(const LeastSquaresResult& result, std::size_t readings, Fit& fit) const {
    Narrowed& narrowed = fit.narrowed;
    const double spread = std::sqrt(std::max(1.0, result.chi2 / degreesOf(readings)));
    std::array<double, Narrowed::kParts> widen{};
    for (std::size_t k = 0; k < Narrowed::kParts; ++k) {
      const double sd = std::sqrt(result.covariance[k * Narrowed::kParts + k]);
      widen[k] = sd > 0.0 ? std::min(spread, std::max(1.0, m_limits.priors[k].sd / sd)) : 1.0;
    }
    for (std::size_t k = 0; k < Narrowed::kParts; ++k) {
      narrowed.mean[k] = result.theta[k];
      narrowed.low[k] = m_limits.bounds[k].low;
      narrowed.high[k] = m_limits.bounds[k].high;
      for (std::size_t l = 0; l < Narrowed::kParts; ++l) {
        narrowed.covariance[k][l] =
            widen[k] * widen[l] * result.covariance[k * Narrowed::kParts + l];
      }
    }
    narrowed.soil_share = m_ground.leaks().soilShare();
    narrowed.flow_known = fit.flow_known;
  }

  void takeBands(Fit& fit) const {
    const Narrowed& n = fit.narrowed;
    const FitLeaks& leaks = m_ground.leaks();
    const double t = m_model.layer.transmissivity_m3_s_pa * std::exp(n.mean[Narrowed::fill]);
    const double leak =
        leaks.area_m2 > 0.0 ? leaks.all() / leaks.area_m2 * std::exp(n.mean[Narrowed::leak]) : 0.0;
    const double sd_t = n.sd(Narrowed::fill);
    const double sd_l = n.sd(Narrowed::leak);
    const double both = n.covariance[Narrowed::fill][Narrowed::leak];
    fit.transmissivity_m3_s_pa = banded(t, sd_t, kNormal95);
    fit.leak_m_s_pa = banded(leak, sd_l, kNormal95);
    fit.lambda_m =
        banded(leak > 0.0 ? std::sqrt(t / leak) : 0.0,
               0.5 * std::sqrt(std::max(0.0, sd_t * sd_t + sd_l * sd_l - 2.0 * both)), kNormal95);
    fit.correlation = sd_t > 0.0 && sd_l > 0.0 ? both / (sd_t * sd_l) : 0.0;
  }

  void takePit(Fit& fit) const {
    for (const FitForward::Run& run : m_ground.runs()) {
      const Measured& test = m_ground.tests()[run.test];
      if (!test.pit_pa || !test.flow_m3_s) continue;
      fit.pit_excess_pa = *test.pit_pa - readAt(run.port, run.suction) -
                          run.flow_m3_s * ownTerm(run.port, fit.scales);
      return;
    }
  }

  void state(Fit& fit) const {
    const auto say = [&](const char* id) { fit.statements.emplace_back(id); };
    std::size_t fitted = 0;
    std::size_t none = 0;
    for (std::size_t i = 0; i < holes().size(); ++i) {
      if (fit.holes[i].outlier) {
        fit.statements.emplace_back("suction.fit.outlier",
                                    std::vector{base::text("hole", fit.holes[i].hole)});
        continue;
      }
      ++fitted;
      none += holes()[i].datum().below ? 1U : 0U;
      if (holes()[i].reading.suction_pa < -2.0 * kGaugeStep_pa) {
        fit.statements.emplace_back("suction.fit.negative",
                                    std::vector{base::text("hole", fit.holes[i].hole)});
      }
    }
    for (const std::size_t hole : m_suspects) {
      fit.statements.emplace_back("suction.fit.suspect",
                                  std::vector{base::text("hole", fit.holes[hole].hole)});
    }
    if (fit.chi2 > kContradictory * degreesOf(fitted)) {
      fit.state = FitState::contradictory;
      return say("suction.fit.contradictory");
    }
    if (!fit.flow_known) say("suction.fit.no-flow");
    if (fit.state == FitState::not_settled) say("suction.fit.not-settled");
    if (fit.chi2 > kUnsuited * degreesOf(fitted)) say("suction.fit.misfit");
    if (none == fitted) return say("suction.fit.none-reached");
    const bool few = static_cast<double>(fitted) <= kTold;
    if (few) say("suction.fit.few");
    if (fit.flow_known) stateBands(few, fit);
  }

  static void stateBands(bool few, Fit& fit) {
    const auto say = [&](const char* id) { fit.statements.emplace_back(id); };
    const Narrowed& n = fit.narrowed;
    const bool fill = n.sd(Narrowed::fill) <= kTellsNothing;
    const bool leak = n.sd(Narrowed::leak) <= kTellsNothing;
    if (std::abs(fit.correlation) > kTiedTogether) {
      say("suction.fit.tied");
    } else if (!fill && !leak) {
      if (!few) say("suction.fit.little");
    } else if (!fill) {
      say("suction.fit.no-transmissivity");
    } else if (!leak) {
      say("suction.fit.no-leakage");
    }
    const bool both = n.soil_share > 0.0 && n.soil_share < 1.0;
    if (leak && both && n.sd(Narrowed::split) > kTellsNothing) say("suction.fit.no-joints");
  }

  const SuctionModel& m_model;
  const FitOptions& m_options;
  FitForward m_ground;
  std::optional<FitForward> m_coarse;  ///< to search on
  LeastSquaresOptions m_limits;
  LeastSquaresResult m_rest;            ///< without the odd one
  std::vector<std::size_t> m_suspects;  ///< any of them may be the odd one
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

double readingSd_pa(double suction_pa) { return std::hypot(0.05 * suction_pa, kGaugeStep_pa); }

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
