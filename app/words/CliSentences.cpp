// Sentences of the command line's own errors, and of quantities that are none.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> cliSentences() {
  static constexpr auto rows = std::to_array<Sentence>({
      {"quantity.unknown", QT_TRANSLATE_NOOP("Sentences", "unknown")},
      {"quantity.of", QT_TRANSLATE_NOOP("Sentences", "{value}")},
      {"cli.usage", QT_TRANSLATE_NOOP("Sentences", "{what}. Run sumpwright --help.")},
      {"cli.no-ring",
       QT_TRANSLATE_NOOP("Sentences",
                         "There is no ring {ring}; the rings of this plan are 0 to {last}.")},
      {"cli.off-ring",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "There is no chainage {chainage} m on ring {ring}: it is {length} m round, "
           "so a place on it is from 0 to {length}.")},
      {"cli.no-folder", QT_TRANSLATE_NOOP("Sentences", "The folder {folder} cannot be made.")},
      {"cli.no-display",
       QT_TRANSLATE_NOOP("Sentences",
                         "There is no display to open a window on. The subcommands check, site, "
                         "suction and draw need none: see sumpwright --help.")},
      {"cli.no-fan",
       QT_TRANSLATE_NOOP("Sentences", "There is no fan “{fan}”; there are: {known}.")},
      {"cli.which-fan",
       QT_TRANSLATE_NOOP("Sentences", "{fan} holds several fans: name one after a #, of {known}.")},
      {"cli.no-place",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The design has no sump in an outside wall, and no place is proposed: give "
           "one with --at.")},
      {"cli.no-sump",
       QT_TRANSLATE_NOOP("Sentences", "The design has no sump “{sump}” in an outside wall.")},
  });
  return rows;
}

}  // namespace sumpwright::words
