#pragma once
// Where test holes would teach most, asked for the sump in hand and what is drilled already.

#include <optional>
#include <vector>

#include "session/Session.h"
#include "session/SuctionDesk.h"
#include "suction/Fit.h"

namespace sumpwright::stages {

struct HolesAsked {
  std::vector<suction::ProposedHole> holes;
  std::optional<base::Message> forbidden;  ///< why some place is none, where there are no holes
  geometry::Point there;                   ///< ... and that place
};

/// Two to five, for the sump that is in hand at the flow it is predicted to draw. Empty where no
/// field is worked out.
HolesAsked proposedHoles(const session::Session& session, const session::SuctionDesk& desk,
                         int count);

}  // namespace sumpwright::stages
