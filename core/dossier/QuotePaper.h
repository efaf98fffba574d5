#pragma once
// A quote for the client, and a shopping list for the crew, on paper.

#include "dossier/ClientPlan.h"
#include "price/Quote.h"

namespace sumpwright::dossier {

/// Lines with prices, totals, what is offered on top, what is not stated. Lines left out are not
/// printed.
Document quotePaper(const siting::Study& study, const drawing::Voice& voice,
                    const ClientPlanOptions& options, const price::PricedQuote& quote);

/// Material without prices, each with a box to tick.
Document shoppingPaper(const siting::Study& study, const drawing::Voice& voice,
                       const ClientPlanOptions& options, const price::PricedQuote& quote);

}  // namespace sumpwright::dossier
