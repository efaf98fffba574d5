#pragma once
// The client's marked-up plan: where, is it all right, the plan, the walls unrolled, how far from
// what, what to expect, what to mind (in the order a householder asks).

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "dossier/Document.h"
#include "dossier/Letterhead.h"
#include "drawing/Voice.h"
#include "price/Quote.h"
#include "price/RunningYear.h"
#include "siting/SuctionStudy.h"

namespace sumpwright::dossier {

/// What the suction study says of this sump; it takes about half a second, so the caller computes
/// it, in the background where somebody waits.
struct Outlook {
  siting::SuctionAnswer answer;
  std::string fan;         ///< its title
  bool invented = false;   ///< a demo class, no product
  base::Problems why_not;  ///< not empty: there is no answer
};

/// What the job costs, for quote and shopping list; made by the caller, who knows the price books.
struct Pricing {
  price::PricedQuote quote;
  base::Problems why_not;  ///< not empty: there are no prices, but the lines stand in `quote`
};

enum class Suction {
  left_out,  ///< nothing is said of it
  expected   ///< told where there is an outlook, else said to be not computed yet
};

struct ClientPlanOptions {
  PaperSize size = PaperSize::a4;
  bool landscape = false;
  std::string sump;       ///< which sump of the design; empty: the first cored one
  std::string date;       ///< ISO date printed on the sheet; the core has no clock
  Letterhead letterhead;  ///< empty: none
  Suction suction = Suction::left_out;
  std::shared_ptr<const Outlook> outlook;
  /// What the firm stands for; empty: workmanship and parts, and that no radon level is guaranteed.
  std::vector<std::string> terms;
  /// What a year costs is told in it: price::tariffOf() with the job, its price book and the firm.
  price::Tariff tariff;
  std::shared_ptr<const Pricing> pricing;  ///< nothing: quote and shopping list say so
};

/// The paper for the job's sump, or, when the design has none, for its stretches alone (said so).
/// As many pages as the text needs; the plan at the largest of 1:50 ... 1:250 that fits.
Document clientPlan(const siting::Study& study, const drawing::Voice& voice,
                    const ClientPlanOptions& options);

/// The same with what a client has to decide: what will be seen and heard, cost in a year, what is
/// asked of them, the re-test, terms.
Document proposal(const siting::Study& study, const drawing::Voice& voice,
                  const ClientPlanOptions& options);

}  // namespace sumpwright::dossier
