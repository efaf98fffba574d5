#pragma once
// Verbs on an outline that is taped wall by wall: the field book (Ring::taped) and the corners that
// follow from it. Each takes a job and gives back the changed job or the reason why not.
//
// While a ring is open its corners are those of the tape, one more than walls, from the ring's
// first corner (the origin where it had none); facts of walls go by their number. Once closed a
// correction in the book closes it again the way it was closed, and the rest follows. What stands
// on a wall keeps its distance from the wall's first corner, and is kept on the wall as far as it
// fits.
//
// Errors of all: plan.edit.no-edge for a ring or wall that is not there; plan.edit.not-a-place for
// a length or bearing that is no finite number, or a corner beyond 10 km; plan.ring.short-edge for
// a length under a millimetre; plan.tape.none where the ring has no field book (its corners were
// dragged since, or drawn).

#include <optional>
#include <vector>

#include "base/Result.h"
#include "geometry/Traverse.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// An outline that closes worse than 1 in so much is to be measured again, and closes poorly at
/// worse than the other (own figures).
inline constexpr double kGoodClosing = 1000.0;
inline constexpr double kPoorClosing = 500.0;

/// A wall of the book as a leg; a right angle taken for granted is a bearing that is held.
geometry::Leg legOf(const TapedWall& wall);
std::vector<geometry::Leg> legsOf(const std::vector<TapedWall>& walls);

/// Whether walls can be added: the plan has no rings yet, or this ring is open and has a book (or
/// no walls at all).
bool mayTape(const Job& job, int ring);

/// Adds a wall at the end of an open ring; ring 0 is begun where the plan has none, and a courtyard
/// where `ring` is the number of rings: at `start`, or the origin. Where the ring has a corner
/// already, `start` is not looked at. Error: plan.tape.closed.
base::Result<Job> addTaped(const Job& job, int ring, const TapedWall& wall,
                           std::optional<Point> start = std::nullopt);

/// Corrects wall `index` of the book.
base::Result<Job> replaceTaped(const Job& job, int ring, std::size_t index, const TapedWall& wall);

/// Puts a wall before wall `index`; what stood on the later walls goes with them. A closed ring
/// must be opened first: plan.tape.closed.
base::Result<Job> insertTaped(const Job& job, int ring, std::size_t index, const TapedWall& wall);

/// Takes wall `index` out of an open ring with what stands on it; what stood on later walls goes
/// with them. Error: plan.tape.closed.
base::Result<Job> removeTaped(const Job& job, int ring, std::size_t index);

/// Closes an open ring. compass_rule and least_squares share the gap out; not_shared draws one more
/// wall straight back to the start, which stands in no book: nobody measured it (none where the gap
/// is under a millimetre).
/// A ring walked the wrong way round is turned (Plan.h), its book too. Errors: plan.tape.closed,
/// plan.tape.few for fewer than three walls (two, where one more is drawn), plan.tape.cannot-share
/// where least squares finds nothing that may change, plan.tape.no-area for an outline without
/// area.
base::Result<Job> closeTaped(const Job& job, int ring, Sharing sharing);

/// Opens a closed ring again: its corners are those of the tape. Error: plan.tape.open.
base::Result<Job> reopenTaped(const Job& job, int ring);

/// The ring walked the other way round: same corners in space, walls and things with them, first
/// corner kept. Contract: the ring is there, closed, with a wall to each corner.
Job turnedRound(const Job& job, int ring);

}  // namespace sumpwright::plan
