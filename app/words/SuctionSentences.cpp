// Sentences of the suction under the floor.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> suctionSentences() {
  static constexpr auto rows = std::to_array<Sentence>({
      {"suction.chance.stopped",
       QT_TRANSLATE_NOOP("Sentences", "The chance of reach was not computed to its end.")},
      {"suction.fit.few",
       QT_TRANSLATE_NOOP("Sentences",
                         "There are no more readings than figures to be told from them: what "
                         "was assumed of the ground decides as much as what was measured. Drill "
                         "one more hole, far from the others.")},
      {"suction.fit.no-flow",
       QT_TRANSLATE_NOOP("Sentences",
                         "The flow was not measured: how fast suction falls with distance can be "
                         "told, how much air the ground gives cannot. Nothing can be said of "
                         "another fan.")},
      {"suction.fit.no-joints",
       QT_TRANSLATE_NOOP("Sentences",
                         "The readings do not tell the leakage of the joints. Holes close to the "
                         "walls would.")},
      {"suction.fit.no-leakage",
       QT_TRANSLATE_NOOP("Sentences",
                         "The readings do not tell how much leaks in. A hole far from the sump "
                         "would.")},
      {"suction.fit.no-transmissivity",
       QT_TRANSLATE_NOOP("Sentences",
                         "The readings do not tell how easily air runs through the fill, only "
                         "how much leaks in altogether. A hole nearer to the sump would.")},
      {"suction.fit.not-settled",
       QT_TRANSLATE_NOOP("Sentences",
                         "No ground was found that explains the readings better than its "
                         "neighbours: take these figures for a guess.")},
      {"suction.fit.outlier",
       QT_TRANSLATE_NOOP("Sentences",
                         "Hole {hole} does not fit what the others say. Look for a wall that "
                         "shuts it off, a duct or drain beside it, or a slip of the pen.")},
      {"suction.fit.tied",
       QT_TRANSLATE_NOOP("Sentences",
                         "More air through the fill and more leakage explain these readings "
                         "alike: only the two together are known. One hole near the sump and one "
                         "far from it would part them.")},
      {"suction.fit.too-few",
       QT_TRANSLATE_NOOP("Sentences",
                         "It takes readings in at least two holes through the floor to tell "
                         "anything of the ground.")},
      {"suction.hole.fitting",
       QT_TRANSLATE_NOOP("Sentences", "a fitting stands within 0.3 m, and so do its pipes")},
      {"suction.hole.heating-pipe",
       QT_TRANSLATE_NOOP("Sentences", "a heating pipe runs within 0.3 m")},
      {"suction.hole.service", QT_TRANSLATE_NOOP("Sentences", "a service runs within 0.3 m")},
      {"suction.hole.underfloor-heating",
       QT_TRANSLATE_NOOP("Sentences", "there is heating in this floor")},
      {"suction.hole.wet-room",
       QT_TRANSLATE_NOOP("Sentences", "it is a wet room: pipes, tanking and tiles")},
      {"suction.model.area",
       QT_TRANSLATE_NOOP("Sentences",
                         "There is no floor on fill within the walls: suction under the floor "
                         "cannot be computed.")},
      {"suction.model.leakage",
       QT_TRANSLATE_NOOP("Sentences",
                         "Some part of the floor leaks nowhere, so that its suction has no "
                         "limit. Give the slab, its joints or the soil some leakage.")},
      {"suction.model.numbers",
       QT_TRANSLATE_NOOP("Sentences",
                         "A figure of the ground or of the floor is negative or no number.")},
      {"suction.model.plan",
       QT_TRANSLATE_NOOP("Sentences",
                         "Suction needs a closed outline that does not cross itself.")},
      {"suction.model.transmissivity",
       QT_TRANSLATE_NOOP("Sentences",
                         "The fill under the floor lets no air through: its permeability and "
                         "depth must be more than nothing.")},
      {"suction.options",
       QT_TRANSLATE_NOOP("Sentences",
                         "Cells of the suction field measure 5 mm to 1 m, and factors on the "
                         "ground are positive.")},
  });
  return rows;
}

}  // namespace sumpwright::words
