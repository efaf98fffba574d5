// Sentences of the suction under the floor.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> suctionSentences() {
  static constexpr auto rows = std::to_array<Sentence>({
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
