// Sentences of the suction under the floor.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> suctionSentences() {
  static constexpr auto rows = std::to_array<Sentence>({
      {"suction.chance.stopped",
       QT_TRANSLATE_NOOP("Sentences", "The chance of reach was not computed to its end.")},
      {"suction.fit.contradictory",
       QT_TRANSLATE_NOOP("Sentences",
                         "These readings contradict each other on any ground: nothing is told of "
                         "it, and the prediction rests on what was assumed. Check the figures and "
                         "their places, and measure again.")},
      {"suction.fit.few",
       QT_TRANSLATE_NOOP("Sentences",
                         "There are no more readings than figures to be told from them: what "
                         "was assumed of the ground decides as much as what was measured. Drill "
                         "one more hole, far from the others.")},
      {"suction.fit.little",
       QT_TRANSLATE_NOOP("Sentences",
                         "The readings tell little of how easily air runs through the fill and of "
                         "how much leaks in. One hole near the sump and one far from it would "
                         "tell more.")},
      {"suction.fit.misfit",
       QT_TRANSLATE_NOOP("Sentences",
                         "These readings do not suit the model: no even ground explains them "
                         "together, they lie farther off the fit than gauges err. Look for a wall, "
                         "duct or drain that is not on the plan, and whether the sump stood where "
                         "the test says.")},
      {"suction.fit.negative",
       QT_TRANSLATE_NOOP("Sentences",
                         "{hole:cap} reads under nothing: it counts as without suction. Either "
                         "the house draws harder there than the fan, or the gauge's tubes were "
                         "crossed.")},
      {"suction.fit.no-flow",
       QT_TRANSLATE_NOOP("Sentences",
                         "The flow was not measured: how fast suction falls with distance can be "
                         "told, how much air the ground gives cannot. Nothing can be said of "
                         "another fan.")},
      {"suction.fit.no-joints",
       QT_TRANSLATE_NOOP("Sentences",
                         "How much of the leakage comes up through the ground and how much "
                         "through the joints the readings do not tell: both count as widely as "
                         "was assumed.")},
      {"suction.fit.no-leakage",
       QT_TRANSLATE_NOOP("Sentences",
                         "The readings do not tell how much leaks in. A hole far from the sump "
                         "would.")},
      {"suction.fit.none-reached",
       QT_TRANSLATE_NOOP("Sentences",
                         "No hole had suction that a gauge can tell (0.3 Pa): the ground has only "
                         "a limit from it, and the fan does not reach so far. A hole nearer to "
                         "the sump would tell more.")},
      {"suction.fit.not-read",
       QT_TRANSLATE_NOOP("Sentences", "A reading is left out of the fit. {why}")},
      {"suction.fit.no-transmissivity",
       QT_TRANSLATE_NOOP("Sentences",
                         "The readings do not tell how easily air runs through the fill, only "
                         "how much leaks in altogether. A hole nearer to the sump would.")},
      {"suction.fit.not-settled",
       QT_TRANSLATE_NOOP("Sentences",
                         "No ground was found that explains the readings better than its "
                         "neighbours: take these figures for a guess.")},
      {"suction.fit.left-out",
       QT_TRANSLATE_NOOP("Sentences",
                         "Tests left out, since their flow was not measured: {tests}.")},
      {"suction.fit.off-floor",
       QT_TRANSLATE_NOOP("Sentences",
                         "{hole:cap} is in no floor on fill: what was read there is left out.")},
      {"suction.fit.sump-off-floor",
       QT_TRANSLATE_NOOP("Sentences",
                         "The sump of the pressure test {test} stood in no floor on fill: the test "
                         "is left out.")},
      {"suction.fit.outlier",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{hole:cap} is left out, the other holes contradict it. Look for a wall that "
           "shuts it off, a duct or drain beside it, or a slip of the pen.")},
      {"suction.fit.suspect",
       QT_TRANSLATE_NOOP("Sentences",
                         "{hole:cap} may be the one that is wrong: without it the others go "
                         "together. Which one it is these readings do not tell: read it again.")},
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
       QT_TRANSLATE_NOOP("Sentences", "a fitting stands within {=0.3 m}, and so do its pipes")},
      {"suction.hole.heating-pipe",
       QT_TRANSLATE_NOOP("Sentences", "a heating pipe runs within {=0.3 m}")},
      {"suction.hole.old-tiles",
       QT_TRANSLATE_NOOP("Sentences",
                         "there are old tiles or black glue that may hold asbestos: tested first")},
      {"suction.hole.old-tiles-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "nobody looked for old tiles or black glue, and the floor is not known to "
                         "be of 2000 or later: they may hold asbestos")},
      {"suction.hole.service", QT_TRANSLATE_NOOP("Sentences", "a service runs within {=0.3 m}")},
      {"suction.hole.underfloor-heating",
       QT_TRANSLATE_NOOP("Sentences", "there is heating in this floor")},
      {"suction.hole.wet-room",
       QT_TRANSLATE_NOOP("Sentences", "it is a wet room: pipes, tanking and tiles")},
      {"suction.material.between", QT_TRANSLATE_NOOP("Sentences", "{low}, up to {high}")},
      {"suction.material.hardcore", QT_TRANSLATE_NOOP("Sentences", "hardcore with fines")},
      {"suction.material.sand", QT_TRANSLATE_NOOP("Sentences", "sand")},
      {"suction.material.silt", QT_TRANSLATE_NOOP("Sentences", "silt or clay")},
      {"suction.material.stone", QT_TRANSLATE_NOOP("Sentences", "clean stone")},
      {"suction.expected.hole", QT_TRANSLATE_NOOP("Sentences", "{hole:cap}: ≈ {suction}.")},
      {"suction.expected.test",
       QT_TRANSLATE_NOOP("Sentences",
                         "Pressure test {test} at {flow:0}, from where its sump stood, on the "
                         "middle guess at the ground:")},
      {"suction.measured.hole", QT_TRANSLATE_NOOP("Sentences", "{hole:cap}: {suction}.")},
      {"suction.measured.pit", QT_TRANSLATE_NOOP("Sentences", "In the pit: {suction}.")},
      {"suction.measured.test",
       QT_TRANSLATE_NOOP("Sentences", "Pressure test {test} at {flow:0}:")},
      {"suction.measured.test-no-flow",
       QT_TRANSLATE_NOOP("Sentences", "Pressure test {test}, its flow not measured:")},
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
                         "Cells of the suction field measure {=5 mm} to {=1 m}, and factors on the "
                         "ground are positive.")},
      {"suction.assumed.best-place",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "No sump is drawn and no place was asked for: the best place by the rules is taken.")},
      {"suction.assumed.depth",
       QT_TRANSLATE_NOOP("Sentences", "The fill is {low} to {high} deep.")},
      {"suction.assumed.fan",
       QT_TRANSLATE_NOOP("Sentences", "Each sump has a fan of its own, {fan}.")},
      {"suction.assumed.fan-invented",
       QT_TRANSLATE_NOOP("Sentences",
                         "Each sump has a fan of its own, {fan}: a demo class, no product. Take "
                         "your supplier's curve for a real job.")},
      {"suction.assumed.fill", QT_TRANSLATE_NOOP("Sentences", "Under the slab lies {fill}.")},
      {"suction.assumed.guesses",
       QT_TRANSLATE_NOOP("Sentences", "The ground was guessed {draws} times within these ranges.")},
      {"suction.assumed.joint",
       QT_TRANSLATE_NOOP("Sentences", "The joint of slab and wall is open by {low} to {high} mm.")},
      {"suction.assumed.permeability",
       QT_TRANSLATE_NOOP("Sentences",
                         "The fill lets air through like {like}: {low} to {high} m².")},
      {"suction.assumed.pipe",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Pipe of {bore} inside, {before} before the fan and {after} after it, bends: {bends}.")},
      {"suction.assumed.pit", QT_TRANSLATE_NOOP("Sentences", "The pit is {litres} litres.")},
      {"suction.assumed.soil",
       QT_TRANSLATE_NOOP("Sentences",
                         "The soil below lets through {low} to {high} m/s per pascal.")},
      {"suction.assumed.target",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{target} are asked for everywhere; {limit} are the least that counts as held.")},
      {"suction.assumed.trenches",
       QT_TRANSLATE_NOOP("Sentences",
                         "The trenches of drains under the floor ({drains}) carry air along them, "
                         "or they do not: both are worked out, and the worse counts.")},
      {"suction.case.both", QT_TRANSLATE_NOOP("Sentences", "{one}, {other}")},
      {"suction.case.party-closed",
       QT_TRANSLATE_NOOP("Sentences", "if the fill ends at the party wall")},
      {"suction.case.party-open", QT_TRANSLATE_NOOP("Sentences", "if the fill goes on next door")},
      {"suction.case.trenches-filled",
       QT_TRANSLATE_NOOP("Sentences", "if the drains' trenches are as tight as the fill")},
      {"suction.case.trenches-open",
       QT_TRANSLATE_NOOP("Sentences", "if the drains' trenches carry air")},
      {"suction.case.walls-on-slab",
       QT_TRANSLATE_NOOP("Sentences", "if inner walls of unknown footing stand on the slab")},
      {"suction.case.walls-stand",
       QT_TRANSLATE_NOOP("Sentences", "if inner walls of unknown footing go through the fill")},
      {"suction.caution.locate",
       QT_TRANSLATE_NOOP("Sentences",
                         "Before coring or drilling, locate the services and look for asbestos; "
                         "local codes and licensed trades decide what may be done.")},
      {"suction.caution.neighbour",
       QT_TRANSLATE_NOOP("Sentences",
                         "The fill may go on next door: tell the neighbour, offer a radon test, "
                         "and test for spillage there too.")},
      {"suction.caution.no-concentration",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "No radon concentration is predicted: no published formula turns suction under a floor "
           "into Bq/m³. Measure after the works; the re-test decides.")},
      {"suction.caution.prediction",
       QT_TRANSLATE_NOOP("Sentences",
                         "All of this is a prediction from assumed ground. Before any price, test "
                         "with a temporary fan and read the suction at the far places.")},
      {"suction.caution.spillage",
       QT_TRANSLATE_NOOP("Sentences",
                         "A fan can draw flue gas back into the room: test for spillage with the "
                         "fan on, doors shut and every extract running.")},
      {"suction.duty.fan", QT_TRANSLATE_NOOP("Sentences", "≈ {flow:0} at ≈ {fan:0}")},
      {"suction.duty.shared",
       QT_TRANSLATE_NOOP("Sentences", "One fan for all: ≈ {flow:0} at ≈ {fan:0}")},
      {"suction.duty.sump",
       QT_TRANSLATE_NOOP("Sentences", "Fan of sump {sump}: ≈ {flow:0} at ≈ {fan:0}")},
      {"suction.fill.clean_stone", QT_TRANSLATE_NOOP("Sentences", "clean stone")},
      {"suction.fill.graded", QT_TRANSLATE_NOOP("Sentences", "hardcore with fines")},
      {"suction.fill.none", QT_TRANSLATE_NOOP("Sentences", "no hardcore")},
      {"suction.fill.unknown",
       QT_TRANSLATE_NOOP("Sentences", "nobody knows what, so anything from fines to clean stone")},
      {"suction.middle",
       QT_TRANSLATE_NOOP("Sentences",
                         "{floor:0,down} of the floor and {joint:0,down} of the wall joint at "
                         "{target} or more, {floor_limit:0,down} of the floor at {limit} or more; "
                         "least {least:down} at {where}. {flow} of air, {pit:0} in the pit.")},
      {"suction.coarser",
       QT_TRANSLATE_NOOP("Sentences",
                         "Much floor to work out: cells of {field} for the field and {guesses} for "
                         "the guesses in place of {asked}, so edges are a little blurred.")},
      {"suction.no-duty",
       QT_TRANSLATE_NOOP("Sentences",
                         "No suction can be worked out: fan, speed or pipe lie outside "
                         "what their formulas hold for.")},
      {"suction.pits-in-one",
       QT_TRANSLATE_NOOP("Sentences",
                         "Sump {sump} stands {apart} from sump {other}: their pits run into "
                         "each other. Keep at least {least} between them.")},
      {"suction.no-guess",
       QT_TRANSLATE_NOOP("Sentences",
                         "No chance of reach: the sump's part of the floor is too small for the "
                         "cells of the guesses.")},
      {"suction.no-place", QT_TRANSLATE_NOOP("Sentences",
                                             "The design has no sump and no place is clear or only "
                                             "advised against: say where the sump is to be.")},
      {"suction.range.flow",
       QT_TRANSLATE_NOOP("Sentences", "Air drawn: in eight of ten guesses {low:0} to {high:0}.")},
      {"suction.range.pit",
       QT_TRANSLATE_NOOP("Sentences",
                         "Suction in the pit: in eight of ten guesses {low:0} to {high:0}.")},
      {"suction.second.allowed", QT_TRANSLATE_NOOP("Sentences", "no rule refuses it")},
      {"suction.second.hardly",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A second sump would likely help little: at best on the {wall}, {chainage} from corner "
           "{corner} ({state}), the floor held would go from {before:0,down} to {after:0,down} on "
           "average.")},
      {"suction.second.helps",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A second sump with a fan of its own on the {wall}, {chainage} from corner {corner} "
           "({state}), would likely raise the floor held from {before:0,down} to {after:0,down} on "
           "average, "
           "and the chance of the whole floor from {whole_before:0,down} to "
           "{whole_after:0,down}.")},
      {"suction.second.helps-shared",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A second sump on the same fan on the {wall}, {chainage} from corner {corner} "
           "({state}), "
           "would likely raise the floor held from {before:0,down} to {after:0,down} on average, "
           "and the chance of the whole floor from {whole_before:0,down} to "
           "{whole_after:0,down}.")},
      {"suction.second.not-proven", QT_TRANSLATE_NOOP("Sentences", "not proven")},
      {"suction.sump-off-floor",
       QT_TRANSLATE_NOOP("Sentences",
                         "Sump {sump} does not stand in a floor on fill and is left out.")},
      {"suction.target",
       QT_TRANSLATE_NOOP("Sentences",
                         "The suction asked for and the least that counts must be more than "
                         "nothing, the least no more than what is asked for.")},
      {"suction.thumb.exceeded",
       QT_TRANSLATE_NOOP("Sentences",
                         "Rule of thumb, {most} for one sump in clean stone: exceeded, with "
                         "{found} ({source}).")},
      {"suction.thumb.fill",
       QT_TRANSLATE_NOOP("Sentences",
                         "Rule of thumb, {most} for one sump in clean stone: does not count here, "
                         "since the fill is not known to be clean stone ({source}).")},
      {"suction.thumb.found",
       QT_TRANSLATE_NOOP("Sentences",
                         "{area:0} and {farthest:1} to the farthest corner of the floor")},
      {"suction.thumb.found-shared", QT_TRANSLATE_NOOP("Sentences", "{area:0} and {sumps} sumps")},
      {"suction.thumb.held",
       QT_TRANSLATE_NOOP("Sentences",
                         "Rule of thumb, {most} for one sump in clean stone: kept, with {found} "
                         "({source}).")},
      {"suction.thumb.most", QT_TRANSLATE_NOOP("Sentences", "{most:0} and {far:0}")},
      {"suction.thumb.most-area", QT_TRANSLATE_NOOP("Sentences", "{most:0}")},
      {"suction.thumb.most-far", QT_TRANSLATE_NOOP("Sentences", "{far:0}")},
      {"suction.thumb.wall",
       QT_TRANSLATE_NOOP("Sentences",
                         "Rule of thumb, {most} for one sump in clean stone: does not count here, "
                         "since a wall crosses the fill or may ({source}).")},
      {"suction.verdict.all-but",
       QT_TRANSLATE_NOOP("Sentences", "Prediction: {held}. Likely to reach all but {where}.")},
      {"suction.verdict.held",
       QT_TRANSLATE_NOOP("Sentences",
                         "{target} or more under {middle:0,down} of the floor on the middle guess "
                         "at the ground, and under all of it in {whole} of {draws} guesses")},
      {"suction.verdict.little",
       QT_TRANSLATE_NOOP("Sentences",
                         "Prediction: {held}. Count on the floor near the sump only; the rest is "
                         "doubtful, most of all {where}.")},
      {"suction.verdict.not-layered",
       QT_TRANSLATE_NOOP("Sentences",
                         "No reach is predicted: without a granular layer air does not run in a "
                         "layer under the slab. Test with a strong temporary fan; expect {=3 m} to "
                         "{=5 m} from each point (derived), and dig pits of 28 litres or more "
                         "(ANSI/AARST RMS-LB 2018, §6.1.1, on tight fill).")},
      {"suction.verdict.off-floor",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "No suction is predicted: there is no floor on fill behind the wall there.")},
      {"suction.verdict.part",
       QT_TRANSLATE_NOOP("Sentences",
                         "Prediction: {held}. Count on {likely:0,down} of it only; the rest is "
                         "doubtful, most of all {where}.")},
      {"suction.verdict.whole",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Prediction: {held}. Likely to reach the whole floor; least sure is {where}.")},
      {"suction.assumed.fan-shared",
       QT_TRANSLATE_NOOP("Sentences",
                         "All sumps hang on one fan, {fan}, each leg with a valve of its own.")},
      {"suction.assumed.fan-shared-invented",
       QT_TRANSLATE_NOOP("Sentences",
                         "All sumps hang on one fan, {fan}, each leg with a valve of its own: a "
                         "demo class, no product. Take your supplier's curve for a real job.")},
      {"suction.assumed.fitted",
       QT_TRANSLATE_NOOP("Sentences",
                         "What the ground lets through is as fitted to the pressure tests, within "
                         "the bands of the fit.")},
      {"suction.assumed.fitted-shape",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "How fast suction falls with distance is as fitted to the pressure tests; how much air "
           "the ground gives is guessed as without them, for no flow was measured.")},
      {"suction.assumed.guesses-fitted",
       QT_TRANSLATE_NOOP("Sentences",
                         "The ground was guessed {draws} times within what the fit leaves open: 95 "
                         "% of the guesses lie in its bands.")},
      {"suction.assumed.sealed",
       QT_TRANSLATE_NOOP("Sentences", "The pipe is sealed to the inner leaf all round.")},
      {"suction.stated.pipe",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Pipe of {bore} inside, {before} before the fan and {after} after it, bends: {bends}.")},
      {"suction.stated.speed",
       QT_TRANSLATE_NOOP("Sentences", "The fan runs at {speed:0} of its speed.")},
      {"suction.caution.prediction-fitted",
       QT_TRANSLATE_NOOP("Sentences",
                         "What was measured is the suction in the holes; all of this is a "
                         "prediction from ground fitted to it. The re-test decides.")},
      {"suction.fitted.case", QT_TRANSLATE_NOOP("Sentences", "They suit the plan best {case}.")},
      {"suction.fitted.case-open",
       QT_TRANSLATE_NOOP("Sentences",
                         "They cannot tell whether it is otherwise, {case}: that counts too, with "
                         "the ground fitted as if it were so.")},
      {"suction.fitted.case-ruled-out",
       QT_TRANSLATE_NOOP("Sentences", "They contradict the plan {case}: that counts no more.")},
      {"suction.fitted.hole",
       QT_TRANSLATE_NOOP("Sentences", "{hole:cap}: measured {measured}, fitted {fitted}.")},
      {"suction.fitted.hole-outlier",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{hole:cap}: measured {measured}; the others say {fitted}. It does not fit them.")},
      {"suction.fitted.hole-outlier-low",
       QT_TRANSLATE_NOOP("Sentences",
                         "{hole:cap}: measured {measured}; the others say {fitted}. It does not "
                         "fit them: round it less may be held than is predicted.")},
      {"suction.fitted.lambda",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Fitted: suction falls to about a third over {value:1} ({low:1} to {high:1}, 95 %), "
           "the leakage of ground and joints taken together.")},
      {"suction.fitted.stood",
       QT_TRANSLATE_NOOP("Sentences",
                         "The sump of the pressure test {test} stood {where}; it has been moved "
                         "since. The readings count with where it stood.")},
      {"suction.fitted.stood-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "The pressure test {test} does not say where its sump stood: it is taken "
                         "to stand where it did.")},
      {"suction.fitted.no-sump",
       QT_TRANSLATE_NOOP("Sentences",
                         "The pressure test {test} names no sump of the plan and is left out.")},
      {"suction.fitted.lambda-most",
       QT_TRANSLATE_NOOP("Sentences",
                         "Fitted: suction falls to about a third over {high:1} at most (95 %).")},
      {"suction.fitted.lambda-untold",
       QT_TRANSLATE_NOOP("Sentences",
                         "How far suction carries cannot be told from these readings.")},
      {"suction.fitted.not-used",
       QT_TRANSLATE_NOOP("Sentences",
                         "The prediction rests on what was assumed of the ground, not on these "
                         "readings; they are kept.")},
      {"suction.fitted.other-fill",
       QT_TRANSLATE_NOOP("Sentences",
                         "That is not the fill that was counted with before ({said}): read the "
                         "hole nearest to the sump again, and look what lies under the slab.")},
      {"suction.fitted.permeability",
       QT_TRANSLATE_NOOP("Sentences",
                         "Fitted: the fill lets air through like {like} (permeability {value} m², "
                         "{low} to {high} m² at 95 %, if it is {depth} deep).")},
      {"suction.fitted.permeability-untold",
       QT_TRANSLATE_NOOP("Sentences",
                         "How easily air runs through the fill cannot be told from these "
                         "readings.")},
      {"suction.fitted.pit", QT_TRANSLATE_NOOP("Sentences",
                                               "The pit had {excess:0} more than the fit leaves "
                                               "for it: what its own resistance takes.")},
      {"suction.fitted.pit-larger",
       QT_TRANSLATE_NOOP("Sentences",
                         "The pit had {excess:0} less than the fit asks for: it is larger than "
                         "stated, or air came in beside the pipe.")},
      {"suction.fitted.readings",
       QT_TRANSLATE_NOOP("Sentences",
                         "Measured: {readings} readings in holes; pressure tests: {tests}.")},
      {"suction.leak",
       QT_TRANSLATE_NOOP("Sentences",
                         "If the pipe is not sealed to the inner leaf at all, {share:0} of the air "
                         "comes in beside it and {floor:0,down} of the floor is held instead of "
                         "{sealed:0,down}: seal it, and try with smoke.")},
      {"suction.leak-same",
       QT_TRANSLATE_NOOP("Sentences",
                         "If the pipe is not sealed to the inner leaf at all, {share:0} of the air "
                         "comes in beside it, though the floor held stays at {floor:0,down}: seal "
                         "it, and try with smoke.")},
      {"suction.line.annulus",
       QT_TRANSLATE_NOOP("Sentences",
                         "Hold point: seal the pipe at both leaves, and try the gap, weep holes "
                         "and the pit with smoke before backfilling. Backfill dense, not with "
                         "stone, or the pit draws on the open air.")},
      {"suction.line.exposed",
       QT_TRANSLATE_NOOP("Sentences",
                         "The foundation stands free above the ground outside on {walls}, over "
                         "{length} and by {height} on average: render or seal it there, or it lets "
                         "in outdoor air.")},
      {"suction.line.holes-consent",
       QT_TRANSLATE_NOOP("Sentences",
                         "Test holes are drilled through the floor only with your written yes, and "
                         "closed again.")},
      {"suction.line.holes-patch",
       QT_TRANSLATE_NOOP("Sentences",
                         "Hold point: patch the membrane and close every test hole gas-tight when "
                         "the readings are taken.")},
      {"suction.line.hole-not-there",
       QT_TRANSLATE_NOOP("Sentences",
                         "Hold point, test hole {hole}: not drilled there, {reason}.")},
      {"suction.line.holes-where",
       QT_TRANSLATE_NOOP("Sentences",
                         "Test holes: ducts and cupboards first. Locate heating pipes, cables and "
                         "drains; none in heated floors or wet rooms.")},
      {"suction.line.internal",
       QT_TRANSLATE_NOOP("Sentences",
                         "Sump inside: in a cupboard, under stairs or in a garage, never in a "
                         "heated floor. Pipe under suction only within the house, fan in the roof "
                         "space or outside, barrier made good round it.")},
      {"suction.line.internal-not-there",
       QT_TRANSLATE_NOOP("Sentences", "Hold point, sump {sump}: not dug there, {reason}.")},
      {"suction.line.internal-client",
       QT_TRANSLATE_NOOP("Sentences",
                         "The sump is dug inside the house: its place is a cupboard or the like, "
                         "and the floor and its barrier are made good round it.")},
      {"suction.line.neighbour",
       QT_TRANSLATE_NOOP("Sentences",
                         "The fill may go on under the house next door: tell the neighbour, offer "
                         "a radon test, and test for spillage there too.")},
      {"suction.line.no-layer",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "No granular layer: test with a strong temporary fan before anything is priced, and dig "
           "pits of 28 litres or more (ANSI/AARST RMS-LB 2018, §6.1.1, on tight fill).")},
      {"suction.line.party-far",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Sump {sump} stands {off} from the party wall; keep {least} (own figure).")},
      {"suction.line.party-near",
       QT_TRANSLATE_NOOP("Sentences",
                         "Sump {sump} stands {off} from the party wall, less than {least} (own "
                         "figure): move it, or half of what it draws comes from next door.")},
      {"suction.line.shared",
       QT_TRANSLATE_NOOP("Sentences",
                         "A valve and a test port in every leg; write down flow and suction of "
                         "each before and after trimming.")},
      {"suction.shared.even",
       QT_TRANSLATE_NOOP("Sentences",
                         "Trimming the valves would hold hardly more floor: leave them open.")},
      {"suction.shared.leg",
       QT_TRANSLATE_NOOP("Sentences",
                         "Leg of sump {sump}: {flow} with every valve open, {pit:0} in the pit.")},
      {"suction.shared.trim", QT_TRANSLATE_NOOP("Sentences",
                                                "Trimmed as follows, {after:0,down} of the floor "
                                                "would be held instead of {before:0,down}:")},
      {"suction.shared.valve", QT_TRANSLATE_NOOP("Sentences", "valve of sump {sump} {valve}")},
      {"suction.valve.open", QT_TRANSLATE_NOOP("Sentences", "open")},
      {"suction.valve.three-quarters", QT_TRANSLATE_NOOP("Sentences", "three quarters open")},
      {"suction.valve.half", QT_TRANSLATE_NOOP("Sentences", "half open")},
      {"suction.valve.quarter", QT_TRANSLATE_NOOP("Sentences", "a quarter open")},
      {"suction.where.wall",
       QT_TRANSLATE_NOOP("Sentences", "on the {wall}, {chainage} from {corner}")},
      {"suction.where.nowhere", QT_TRANSLATE_NOOP("Sentences", "off the walls of the plan")},
      {"suction.where.corner", QT_TRANSLATE_NOOP("Sentences", "the {side} corner ({corner})")},
      {"suction.where.in-room", QT_TRANSLATE_NOOP("Sentences", "{where}, in {room}")},
      {"suction.where.side", QT_TRANSLATE_NOOP("Sentences", "the {side} side")},
      {"suction.typed.curve",
       QT_TRANSLATE_NOOP("Sentences",
                         "\"{part}\" is no point of a curve. Type pairs of flow and pressure, "
                         "parted by semicolons: 0 400; 100 300; 250 50.")},
      {"suction.typed.spread",
       QT_TRANSLATE_NOOP("Sentences",
                         "Two figures, please, the low one and the high one: 0.1 to "
                         "0.3, or 1e-9 to 1e-7.")},
  });
  return rows;
}

}  // namespace sumpwright::words
