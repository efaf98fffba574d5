// Sentences of the drill section and its drawing.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> sectionSentences() {
  static constexpr auto rows = std::to_array<Sentence>({
      {"drawing.section.blinding", QT_TRANSLATE_NOOP("Sentences", "{thickness:0} blinding")},
      {"drawing.section.clear", QT_TRANSLATE_NOOP("Sentences", "{clear:0,down}")},
      {"drawing.section.core", QT_TRANSLATE_NOOP("Sentences", "core {core:0}, {fall} down")},
      {"drawing.section.dig", QT_TRANSLATE_NOOP("Sentences", "bottom of dig {level:bare}")},
      {"drawing.section.dpc", QT_TRANSLATE_NOOP("Sentences", "damp-proof course {level:bare}")},
      {"drawing.section.floor", QT_TRANSLATE_NOOP("Sentences", "finished floor {level:bare}")},
      {"drawing.section.footing", QT_TRANSLATE_NOOP("Sentences", "footing top {level:bare}")},
      {"drawing.section.footing-high",
       QT_TRANSLATE_NOOP("Sentences", "footing top, highest {level:bare}")},
      {"drawing.section.footing-low",
       QT_TRANSLATE_NOOP("Sentences", "footing top, lowest {level:bare}")},
      {"drawing.section.footing-needed",
       QT_TRANSLATE_NOOP("Sentences", "must be below {level:bare,down}")},
      {"drawing.section.ground", QT_TRANSLATE_NOOP("Sentences", "outside ground {level:bare}")},
      {"drawing.section.hardcore", QT_TRANSLATE_NOOP("Sentences", "{thickness:0} hardcore")},
      {"drawing.section.hole", QT_TRANSLATE_NOOP("Sentences", "middle of hole {level:bare}")},
      {"drawing.section.hollow",
       QT_TRANSLATE_NOOP("Sentences", "hollow {litres:0} l, {across:0} across")},
      {"drawing.section.insulation", QT_TRANSLATE_NOOP("Sentences", "{thickness:0} insulation")},
      {"drawing.section.level", QT_TRANSLATE_NOOP("Sentences", "{level:bare}")},
      {"drawing.section.pipe", QT_TRANSLATE_NOOP("Sentences", "pipe {pipe:0}, to {past:0} inside")},
      {"drawing.section.screed", QT_TRANSLATE_NOOP("Sentences", "{thickness:0} screed")},
      {"drawing.section.short", QT_TRANSLATE_NOOP("Sentences", "{clear:0,down}, needs {needed:0}")},
      {"drawing.section.slab", QT_TRANSLATE_NOOP("Sentences", "{thickness:0} slab")},
      {"drawing.section.thickness", QT_TRANSLATE_NOOP("Sentences", "{thickness:0,bare}")},
      {"section.assumed.barrel", QT_TRANSLATE_NOOP("Sentences", "drill barrel {length:0} long")},
      {"section.assumed.barrier",
       QT_TRANSLATE_NOOP("Sentences",
                         "a radon barrier may lie under the slab: the hole keeps its cover")},
      {"section.assumed.barrier-level",
       QT_TRANSLATE_NOOP("Sentences", "radon barrier at {level:signed}, under the slab")},
      {"section.assumed.blinding", QT_TRANSLATE_NOOP("Sentences", "{thickness:0} of blinding")},
      {"section.assumed.dpc",
       QT_TRANSLATE_NOOP("Sentences", "damp-proof course at {level:signed}")},
      {"section.assumed.floor",
       QT_TRANSLATE_NOOP("Sentences", "the floor behind the wall is a slab on the ground")},
      {"section.assumed.footing",
       QT_TRANSLATE_NOOP("Sentences", "footing top anywhere from {low:signed} to {high:signed}")},
      {"section.assumed.ground",
       QT_TRANSLATE_NOOP("Sentences", "outside ground at {level:signed}")},
      {"section.assumed.hardcore", QT_TRANSLATE_NOOP("Sentences", "{thickness:0} of hardcore")},
      {"section.assumed.insulation",
       QT_TRANSLATE_NOOP("Sentences", "{thickness:0} of insulation in the floor")},
      {"section.assumed.insulation-none",
       QT_TRANSLATE_NOOP("Sentences", "no insulation in the floor")},
      {"section.assumed.leaves",
       QT_TRANSLATE_NOOP("Sentences", "the wall of {wall:0} has two leaves and a cavity")},
      {"section.assumed.one-leaf", QT_TRANSLATE_NOOP("Sentences", "the wall of {wall:0} is solid")},
      {"section.assumed.oversite",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thickness:0} of concrete over the ground, {under} below the floor")},
      {"section.assumed.screed", QT_TRANSLATE_NOOP("Sentences", "{thickness:0} of screed")},
      {"section.assumed.slab", QT_TRANSLATE_NOOP("Sentences", "{thickness:0} of slab")},
      {"section.assumed.wall", QT_TRANSLATE_NOOP("Sentences", "the wall is {thickness:0} thick")},
      {"section.fact.dig",
       QT_TRANSLATE_NOOP("Sentences", "dig outside {dig} deep, with room to work under the hole")},
      {"section.fact.gap",
       QT_TRANSLATE_NOOP("Sentences", "pipe {pipe:0,sold} in it, a gap of {gap:1,sold} all round")},
      {"section.fact.hole",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "core {core:0,sold}, its middle at {entry:signed} to finished floor at the "
           "outside face, {fall} down into the house")},
      {"section.fact.hollow",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "hollow under the slab {litres:0} l ({buckets:1} × a bucket of 12 l), a half "
           "ball of radius {radius:0}")},
      {"section.fact.way",
       QT_TRANSLATE_NOOP("Sentences", "{path:0} through the wall, {drop:0} lower at the inside")},
      {"section.limit.barrel",
       QT_TRANSLATE_NOOP("Sentences", "{clear:0} through the wall, drill {needed:0}")},
      {"section.limit.barrier",
       QT_TRANSLATE_NOOP("Sentences", "{clear:0,down} under the radon barrier, {needed:0} needed")},
      {"section.limit.dig",
       QT_TRANSLATE_NOOP("Sentences", "{clear:0,down} above the deepest dig without support")},
      {"section.limit.dpc",
       QT_TRANSLATE_NOOP("Sentences", "{clear:0,down} below the damp-proof course")},
      {"section.limit.fill",
       QT_TRANSLATE_NOOP("Sentences",
                         "middle of the pipe's end {clear:0,down} above the bottom of the "
                         "hardcore")},
      {"section.limit.footing",
       QT_TRANSLATE_NOOP("Sentences", "{clear:0,down} over the footing, {needed:0} needed")},
      {"section.limit.gentle_fall",
       QT_TRANSLATE_NOOP("Sentences", "falls {clear} to the pit, {needed} at least")},
      {"section.limit.ground",
       QT_TRANSLATE_NOOP("Sentences", "{clear:0,down} clear of the line of the ground outside")},
      {"section.limit.slab",
       QT_TRANSLATE_NOOP("Sentences",
                         "{clear:0,down} under slab and insulation, {needed:0} needed")},
      {"section.limit.steep_fall",
       QT_TRANSLATE_NOOP("Sentences", "falls {clear} to the pit, {needed} at most")},
      {"section.past.barrier",
       QT_TRANSLATE_NOOP("Sentences",
                         "{clear:0} above the radon barrier, {needed:0} under it needed")},
      {"section.past.dig",
       QT_TRANSLATE_NOOP("Sentences", "{clear:0} below the deepest dig without support")},
      {"section.past.dpc", QT_TRANSLATE_NOOP("Sentences", "{clear:0} above the damp-proof course")},
      {"section.past.fill",
       QT_TRANSLATE_NOOP("Sentences",
                         "middle of the pipe's end {clear:0} below the bottom of the hardcore")},
      {"section.past.footing",
       QT_TRANSLATE_NOOP("Sentences", "{clear:0} into the footing, {needed:0} over it needed")},
      {"section.past.ground",
       QT_TRANSLATE_NOOP("Sentences", "{clear:0} past the line of the ground outside")},
      {"section.past.slab",
       QT_TRANSLATE_NOOP("Sentences",
                         "{clear:0} into slab and insulation, {needed:0} under them needed")},
      {"section.none.concrete",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "No cored sump here: the floor is suspended concrete. There is a space "
           "under it and no fill to draw from; air is moved through that space "
           "instead. With concrete over the ground below it can be cored under that.")},
      {"section.none.deep",
       QT_TRANSLATE_NOOP("Sentences",
                         "No cored sump here: the floor lies {depth} under the ground outside, "
                         "too deep to dig for. Put the sump inside.")},
      {"section.none.dwarf",
       QT_TRANSLATE_NOOP("Sentences",
                         "No cored sump here: a dwarf wall under glazing carries no hole.")},
      {"section.none.foundation",
       QT_TRANSLATE_NOOP("Sentences",
                         "No cored sump here: the wall stands on {foundation}, which is not cut "
                         "without an engineer's word.")},
      {"section.none.party",
       QT_TRANSLATE_NOOP("Sentences",
                         "No cored sump here: there is a neighbour behind this wall, not the "
                         "outside.")},
      {"section.none.timber",
       QT_TRANSLATE_NOOP("Sentences",
                         "No cored sump here: the floor is suspended timber. There is a space "
                         "under it and no fill to draw from; that space is ventilated instead. "
                         "With concrete over the ground below it can be cored under that.")},
      {"section.note.backer",
       QT_TRANSLATE_NOOP("Sentences",
                         "The gap round the pipe is {gap:0}: put in a backer before the sealant.")},
      {"section.note.barrel",
       QT_TRANSLATE_NOOP("Sentences",
                         "The way through the wall is {path:0}, the drill barrel {barrel:0}: take "
                         "an extension.")},
      {"section.note.barrier",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "There is a radon barrier: where anything goes through it, it gets a sealed "
           "collar and is put on record.")},
      {"section.note.dig-deep",
       QT_TRANSLATE_NOOP("Sentences",
                         "The dig outside is {depth} deep: short along the wall, one at a time, "
                         "closed the same day.")},
      {"section.note.dig-support",
       QT_TRANSLATE_NOOP("Sentences", "The dig outside is {depth} deep: not without support.")},
      {"section.note.elsewhere",
       QT_TRANSLATE_NOOP("Sentences",
                         "Try another place along the wall, a smaller core, or a sump inside.")},
      {"section.note.fill",
       QT_TRANSLATE_NOOP("Sentences",
                         "The pipe ends below the hardcore: dig the hollow up to the slab.")},
      {"section.note.internal",
       QT_TRANSLATE_NOOP("Sentences", "A sump inside, or another remedy, is the way here.")},
      {"section.note.on-waiver",
       QT_TRANSLATE_NOOP("Sentences",
                         "A hole here rests on the engineer's note that is recorded as a waiver: "
                         "core only as that note says.")},
      {"section.note.on-waiver-of-hole",
       QT_TRANSLATE_NOOP("Sentences",
                         "A hole here rests on the engineer's note that is recorded as a waiver: "
                         "core only as that note says, also where this section says otherwise.")},
      {"section.note.rubble",
       QT_TRANSLATE_NOOP("Sentences",
                         "A rubble footing is uneven on top and loosens beside a hole: see it in "
                         "the trial pit before coring, and stop where it is loose. Hollow no "
                         "deeper than its underside, pit at most {along} along the wall, one at a "
                         "time, closed the same day.")},
      {"section.note.seal-faces",
       QT_TRANSLATE_NOOP("Sentences",
                         "The pipe ends {past:0} past the inner face; backer and seal at both "
                         "faces of the wall. Smoke at the seal before the dig is closed.")},
      {"section.note.seal-leaves",
       QT_TRANSLATE_NOOP("Sentences",
                         "The pipe ends {past:0} past the inner leaf; backer and seal at both "
                         "leaves, or the fan draws from the cavity. Smoke at the seal before the "
                         "dig is closed.")},
      {"section.note.services",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Services located and marked, water at the drill, dust held down, eyes and "
           "ears protected; an engineer's word where the foundation is in doubt.")},
      {"section.note.tight-gap",
       QT_TRANSLATE_NOOP("Sentences",
                         "The gap round the pipe is {gap:0}: too little to seal, and it jams. Take "
                         "a larger core.")},
      {"section.note.hollow-off",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The pipe comes out {off:0} outside the hollow of {litres:0} l as it is "
           "drawn, close under the slab at the wall: dig the hollow to the pipe's end, "
           "or set the hole flatter. The prediction counts the hollow as drawn.")},
      {"section.note.trial-pit",
       QT_TRANSLATE_NOOP("Sentences",
                         "Before the core: dig a trial pit and see the footing top; then drill a "
                         "thin pilot hole on the core's line and feel that it comes out in the "
                         "hardcore, under the slab.")},
      {"section.thing.barrel", QT_TRANSLATE_NOOP("Sentences", "the drill's length")},
      {"section.thing.barrier", QT_TRANSLATE_NOOP("Sentences", "the radon barrier")},
      {"section.thing.dig", QT_TRANSLATE_NOOP("Sentences", "the deepest dig")},
      {"section.thing.dpc", QT_TRANSLATE_NOOP("Sentences", "the damp-proof course")},
      {"section.thing.fill", QT_TRANSLATE_NOOP("Sentences", "the bottom of the hardcore")},
      {"section.thing.footing", QT_TRANSLATE_NOOP("Sentences", "the footing")},
      {"section.thing.gentle_fall", QT_TRANSLATE_NOOP("Sentences", "the least fall")},
      {"section.thing.ground", QT_TRANSLATE_NOOP("Sentences", "the ground outside")},
      {"section.thing.slab",
       QT_TRANSLATE_NOOP("Sentences", "the underside of slab and insulation")},
      {"section.thing.steep_fall", QT_TRANSLATE_NOOP("Sentences", "the steepest fall")},
      {"section.verdict.fits",
       QT_TRANSLATE_NOOP("Sentences",
                         "A core of {core:0} fits at {entry:signed} to the floor, {fall} down to "
                         "the pit.")},
      {"section.verdict.if-footing",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Fits only if the footing top is below {top:signed,down} to the floor; it lies "
           "from {low:signed} to {high:signed}. See it in a trial pit before the "
           "core.")},
      {"section.verdict.never",
       QT_TRANSLATE_NOOP("Sentences",
                         "Does not fit: between {upper} and {lower} {short:0} are missing.")},
      {"section.verdict.no-fall",
       QT_TRANSLATE_NOOP("Sentences", "Does not fit: no fall keeps every limit.")},
      {"section.verdict.wish-fails",
       QT_TRANSLATE_NOOP("Sentences", "This hole does not pass {limit}: {margin}.")},
      {"section.verdict.wish-footing",
       QT_TRANSLATE_NOOP("Sentences",
                         "This hole does not pass the footing: it would need its top below "
                         "{top:signed,down} to the floor, and it lies at {low:signed} or higher.")},
      {"section.void.footing",
       QT_TRANSLATE_NOOP("Sentences",
                         "The hollow may go below the underside of the footing: take out less, or "
                         "see the footing first.")},
      {"section.void.reach",
       QT_TRANSLATE_NOOP("Sentences",
                         "The far side of the hollow is {reach} from the outside face, more than "
                         "an arm's {arm}: dig it with long tools.")},
      {"section.void.small",
       QT_TRANSLATE_NOOP("Sentences", "A hollow of {litres} l is small: {least} l at least.")},
      {"section.void.tight",
       QT_TRANSLATE_NOOP("Sentences", "Without stone under the slab, {advised} l or more.")},
  });
  return rows;
}

}  // namespace sumpwright::words
