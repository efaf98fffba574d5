#pragma once
// The client's marked-up plan: where, is it all right, the plan, the walls unrolled, how far from
// what, what to expect, what to mind (in the order a householder asks).

#include <optional>

#include "dossier/Document.h"
#include "drawing/Voice.h"
#include "siting/Study.h"

namespace sumpwright::dossier {

struct ClientPlanOptions {
  PaperSize size = PaperSize::a4;
  std::string sump;  ///< which sump of the design; empty: the first cored one
  std::string date;  ///< ISO date printed on the sheet; the core has no clock
};

/// The paper for the job's sump, or, when the design has none, for its stretches alone (said so).
/// As many pages as the text needs; the plan at the largest of 1:50 ... 1:250 that fits.
Document clientPlan(const siting::Study& study, const drawing::Voice& voice,
                    const ClientPlanOptions& options);

}  // namespace sumpwright::dossier
