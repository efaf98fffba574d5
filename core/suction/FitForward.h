#pragma once
// What holes would read on a ground, and how that changes with it: the forward model of
// fitGround(). Internal to core/suction.

#include <optional>
#include <string>
#include <vector>

#include "suction/Factor.h"
#include "suction/Fit.h"
#include "suction/Port.h"

namespace sumpwright::suction {

/// A reading on the floor.
struct FitHole {
  std::size_t run = 0;
  Reading reading;
  Datum datum() const;
};

/// Leakage under 1 Pa everywhere, and the floor it is under; next door left out.
struct FitLeaks {
  double soil_m3_s_pa = 0.0;
  double joints_m3_s_pa = 0.0;
  double area_m2 = 0.0;
  double all() const { return soil_m3_s_pa + joints_m3_s_pa; }
  double soilShare() const { return all() > 0.0 ? soil_m3_s_pa / all() : 0.5; }
};

FitLeaks leaksOf(const Network& network);

/// d suction / d each logarithm of Narrowed, by cell; `soil_share` of the leakage as it is.
std::vector<std::vector<double>> logChanges(const Network& network, const Factor& factor,
                                            const Scales& scales, double soil_share,
                                            const std::vector<double>& suction);

class FitForward {
 public:
  /// Contract: checkModel() finds nothing.
  FitForward(const SuctionModel& model, std::vector<Measured> tests, double cell_m);

  /// A test with a place in the floor.
  struct Run {
    std::size_t test = 0;
    Port port;
    double flow_m3_s = 0.0;
    std::vector<double> suction;  ///< by cell, of the last values
  };

  const std::vector<Measured>& tests() const { return m_tests; }
  const std::vector<Run>& runs() const { return m_runs; }
  const std::vector<FitHole>& holes() const { return m_holes; }
  const FitLeaks& leaks() const { return m_leaks; }
  /// What was left out and why.
  const std::vector<base::Message>& leftOut() const { return m_left_out; }

  /// Values in the holes and, row by row, derivatives by the logarithms of Narrowed; false: no
  /// answer there.
  bool valuesAt(const std::vector<double>& logs, const std::vector<FitHole>& holes,
                std::vector<double>& values, std::vector<double>& derivatives);
  Scales scalesAt(const std::vector<double>& logs) const;

 private:
  void takeTest(std::size_t t);
  void takeReading(const Measured& test, const Reading& reading);
  std::vector<std::vector<double>> changesOf(const std::vector<double>& logs,
                                             const std::vector<double>& suction) const;

  std::vector<Measured> m_tests;
  Network m_network;
  Factoriser m_factoriser;
  Factor m_factor;
  FitLeaks m_leaks;
  std::vector<Run> m_runs;
  std::vector<FitHole> m_holes;
  std::vector<base::Message> m_left_out;
};

}  // namespace sumpwright::suction
