#pragma once
// A curve of reach for the drawing tests: a coarse grid, an invented fan.

#include "core/drawing/Drawn.h"
#include "siting/ReachAlong.h"

namespace sumpwright::drawing {

inline siting::ReachAlong reachOf(const siting::Study& study,
                                  plan::Fill fill = plan::Fill::graded) {
  airflow::Fan fan{"law", "Invented fan", "", {base::Mark::own, "invented"}, {}};
  airflow::CurveLaw law;
  law.shut_off = base::Pressure::ofPa(400.0);
  law.free_flow = base::Flow::ofM3PerH(300.0);
  law.power_at_shut_off_w = 40.0;
  law.power_at_free_flow_w = 60.0;
  fan.curve = airflow::FanCurve::byLaw(law).value();
  siting::ReachOptions options;
  options.fill = fill;
  options.cell_m = 0.25;
  options.step_m = 0.5;
  return siting::ReachAlong::of(study, siting::usualSystem(study.site(), fan, true), options)
      .value();
}

}  // namespace sumpwright::drawing
