// Sentences of the cable route.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> cableSentences() {
  static constexpr auto rows = std::to_array<Sentence>({
      {"cable.assumed.dpc",
       QT_TRANSLATE_NOOP("Sentences",
                         "damp-proof course at {level:signed} to the floor; the sleeve passes "
                         "{above} above it at least")},
      {"cable.assumed.head",
       QT_TRANSLATE_NOOP("Sentences", "doors and windows end {head} above the floor")},
      {"cable.assumed.sill",
       QT_TRANSLATE_NOOP("Sentences", "window sills are {sill} above the floor")},
      {"cable.assumed.spare",
       QT_TRANSLATE_NOOP("Sentences", "{share:0} and {more} are bought on top of what is laid")},
      {"cable.caution.drip-loop",
       QT_TRANSLATE_NOOP("Sentences",
                         "Cable enters rising from outside, with a drip loop; conduit up to {=1.5 "
                         "m}.")},
      {"cable.caution.electrician",
       QT_TRANSLATE_NOOP("Sentences",
                         "Connection by a competent or registered electrician to local wiring "
                         "rules, with a certificate. The route is a proposal.")},
      {"cable.caution.isolator",
       QT_TRANSLATE_NOOP("Sentences",
                         "Lockable isolator within sight of the fan; fused as the local wiring "
                         "rules ask.")},
      {"cable.caution.polystyrene",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "No PVC cable against polystyrene; none through the damp-proof course or a "
           "radon barrier.")},
      {"cable.no.room",
       QT_TRANSLATE_NOOP("Sentences",
                         "it stands in no room that is drawn, and at no outside wall")},
      {"cable.no.way",
       QT_TRANSLATE_NOOP("Sentences",
                         "no way along walls that are drawn leads there without crossing a bath or "
                         "shower room or a neighbour's wall")},
      {"cable.no.wet", QT_TRANSLATE_NOOP("Sentences", "it is in a bath or shower room")},
      {"cable.remark.board",
       QT_TRANSLATE_NOOP("Sentences", "A circuit of its own from the consumer unit.")},
      {"cable.remark.circuit-unknown",
       QT_TRANSLATE_NOOP("Sentences", "Which circuit it is on is not known.")},
      {"cable.remark.rcd-shared",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Its RCD is shared: when something else trips it the fan stops, and nobody "
           "may know.")},
      {"cable.remark.rcd-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "Whether its RCD is shared has not been asked. A shared one that trips "
                         "stops the fan.")},
      {"cable.remark.sleeves",
       QT_TRANSLATE_NOOP("Sentences", "Passes outside walls {sleeves} times.")},
      {"cable.remark.socket",
       QT_TRANSLATE_NOOP("Sentences",
                         "A socket is not a fixed supply: a fused spur is taken off its circuit.")},
      {"cable.sentence.no-supply",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "No socket, spur or consumer unit is drawn: the cable cannot be measured.")},
      {"cable.sentence.no-way",
       QT_TRANSLATE_NOOP("Sentences", "No way for a cable to any supply that is drawn.")},
      {"cable.sentence.route",
       QT_TRANSLATE_NOOP("Sentences",
                         "{length} of cable to {supply}; holes through walls: {drillings}.")},
      {"cable.supply.in", QT_TRANSLATE_NOOP("Sentences", "{supply} in {room}")},
  });
  return rows;
}

}  // namespace sumpwright::words
