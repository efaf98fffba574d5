#pragma once
// Whether the waivers of a sump accept what rules say of its hole. Internal to core/build; the rule
// itself is kDrillSection (SectionAlong.h).

#include <string>

#include "build/DrillSection.h"

namespace sumpwright::build {

/// Whether a figure that decides if a hole fits was assumed; what the drill and the fill are does
/// not.
bool isAssumed(const BuildUp& up);
/// The same of how deep the floor lies in the ground.
bool isDepthAssumed(const BuildUp& up);

/// Who accepts that a hole is cored all the same.
enum class CoredBy {
  nobody,
  foundation,  ///< the waivers of all rules on foundations
  hole         ///< those of all rules of the kind section; they accept the hole as it is, too
};

/// An assumed depth accepts nothing.
CoredBy coredBy(NoCore why, const rules::Site& site, const BuildUp& up, perimeter::Place place,
                const std::string& sump);

/// Whether a hole that never fits is accepted: by every rule of the kind section.
bool acceptsHole(const rules::Site& site, const DrillSection& section, perimeter::Place place,
                 const std::string& sump);

}  // namespace sumpwright::build
