// Sentences of the survey: taping an outline, drawing it.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> surveySentences() {
  static constexpr auto rows = std::to_array<Sentence>({
      {"drawing.gap.part", QT_TRANSLATE_NOOP("Sentences", "{length}")},
      {"drawing.gap.times", QT_TRANSLATE_NOOP("Sentences", "gap × {times:0}")},
      {"drawing.outline.area-note", QT_TRANSLATE_NOOP("Sentences", "inside the outside faces")},
      {"drawing.outline.length", QT_TRANSLATE_NOOP("Sentences", "{length:3,bare}")},
      {"lay.few", QT_TRANSLATE_NOOP("Sentences",
                                    "{points} places do not make it yet: it needs {least}. Click "
                                    "the next one, or press Escape to give it up.")},
      {"place.both-on-walls",
       QT_TRANSLATE_NOOP("Sentences",
                         "Choose two things that stand on walls, one after the other: the second "
                         "comes in line with the first.")},
      {"place.both-openings",
       QT_TRANSLATE_NOOP("Sentences",
                         "Choose two openings, one after the other: the second gets the width, "
                         "sill and head of the first.")},
      {"place.meets-nothing",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "An inner wall from there meets no other wall. Type its length as well, or "
           "close the outline first.")},
      {"place.no-inner-wall",
       QT_TRANSLATE_NOOP("Sentences",
                         "No inner wall starts there. Type where it starts along the wall in hand, "
                         "then how far along the inner wall the door is, and how wide.")},
      {"place.no-room",
       QT_TRANSLATE_NOOP("Sentences",
                         "There is no room “{room}”. Type its name, its use or its number in the "
                         "list.")},
      {"place.not-read",
       QT_TRANSLATE_NOOP("Sentences",
                         "“{entry}” is not understood. Look at the example in the tip, and part "
                         "entries by semicolons.")},
      {"place.no-wall", QT_TRANSLATE_NOOP("Sentences", "Choose the wall it belongs to first.")},
      {"place.past-end",
       QT_TRANSLATE_NOOP("Sentences",
                         "It would end {end} along a wall that is {length} long. It does not fit "
                         "there.")},
      {"plan.tape.cannot-share",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Least squares finds nothing that may change: every direction is held at a "
           "right angle and no wall runs the way of the gap. Share it out by the "
           "compass rule, or measure again.")},
      {"plan.tape.closed",
       QT_TRANSLATE_NOOP("Sentences",
                         "The outline is closed. Open it again to add or take out a wall.")},
      {"plan.tape.few",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{walls} walls do not make an outline yet. Tape at least three, or two and "
           "have the last one drawn.")},
      {"plan.tape.no-area",
       QT_TRANSLATE_NOOP("Sentences",
                         "These walls run back over themselves: they enclose nothing. Look at the "
                         "directions.")},
      {"plan.tape.none",
       QT_TRANSLATE_NOOP("Sentences",
                         "This outline has no field book: it was drawn, or its corners were moved "
                         "since it was taped. Move its corners and walls instead.")},
      {"plan.tape.open", QT_TRANSLATE_NOOP("Sentences", "The outline is open already.")},
  });
  return rows;
}

}  // namespace sumpwright::words
