// Sentences on pipes, fans and duty points.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> airSentences() {
  static constexpr auto rows = std::to_array<Sentence>({
      // Fan tables that cannot be used.
      {"fans.too-large",
       QT_TRANSLATE_NOOP("Sentences",
                         "The fan table has {bytes} bytes; {limit} are the most that is read.")},
      {"fans.not-json",
       QT_TRANSLATE_NOOP("Sentences", "The fan table is not JSON; it breaks off at byte {byte}.")},
      {"fans.not-a-table",
       QT_TRANSLATE_NOOP("Sentences",
                         "This is no fan table: it does not begin with the format “{format}”.")},
      {"fans.version",
       QT_TRANSLATE_NOOP("Sentences",
                         "The fan table is of version “{version}”; this program reads version "
                         "{known}.")},
      {"fans.wrong-type", QT_TRANSLATE_NOOP("Sentences",
                                            "A value of the wrong type stands here; {expected} is "
                                            "expected.")},
      {"fans.type.text", QT_TRANSLATE_NOOP("Sentences", "text in quotes")},
      {"fans.type.yes-no", QT_TRANSLATE_NOOP("Sentences", "true or false")},
      {"fans.type.number", QT_TRANSLATE_NOOP("Sentences", "a number")},
      {"fans.type.list", QT_TRANSLATE_NOOP("Sentences", "a list")},
      {"fans.type.object", QT_TRANSLATE_NOOP("Sentences", "an object")},
      {"fans.missing-key", QT_TRANSLATE_NOOP("Sentences", "“{key}” is missing here.")},
      {"fans.unknown-key",
       QT_TRANSLATE_NOOP("Sentences", "“{key}” is no part of a fan table; is it misspelt?")},
      {"fans.unknown-word",
       QT_TRANSLATE_NOOP("Sentences", "“{word}” is not one of the words allowed here.")},
      {"fans.no-source",
       QT_TRANSLATE_NOOP("Sentences",
                         "A source is missing here: name the data sheet and its date, or say that "
                         "the curve is your own measurement.")},
      {"fans.empty", QT_TRANSLATE_NOOP("Sentences", "This may not be empty.")},
      {"fans.repeated",
       QT_TRANSLATE_NOOP("Sentences", "“{word}” stands twice; each may stand once.")},
      {"fans.too-many",
       QT_TRANSLATE_NOOP("Sentences", "The table has {given} fans; {most} are the most.")},
      {"fans.number",
       QT_TRANSLATE_NOOP("Sentences", "The number must lie between {least} and {most}.")},
      {"fans.points-or-law",
       QT_TRANSLATE_NOOP("Sentences",
                         "A fan needs either “points” of its curve or a “law”, and not both.")},
      {"fans.points.few",
       QT_TRANSLATE_NOOP("Sentences", "A curve needs at least {least} points; {given} are given.")},
      {"fans.points.many",
       QT_TRANSLATE_NOOP("Sentences", "A curve has at most {most} points; {given} are given.")},
      {"fans.points.flow-order",
       QT_TRANSLATE_NOOP("Sentences",
                         "The points must go from little air to much: {flow} comes after "
                         "{before}.")},
      {"fans.points.not-falling",
       QT_TRANSLATE_NOOP("Sentences",
                         "The pressure must fall from point to point, but it is {pressure} at "
                         "{flow} after {before} at {before_flow}. Left of a hump a fan stalls: one "
                         "pressure would fit two flows. Leave out the points left of the "
                         "highest.")},
      {"fans.points.power-missing",
       QT_TRANSLATE_NOOP("Sentences",
                         "Give the electric power at every point of the curve or at none.")},

      // A system that cannot be solved as it was put.
      {"airflow.input.count",
       QT_TRANSLATE_NOOP("Sentences",
                         "There must be at least one here and at most {most}; {given} are "
                         "given.")},
      {"airflow.input.line",
       QT_TRANSLATE_NOOP("Sentences", "The leg names a fan that is not there.")},
      {"airflow.input.pipe",
       QT_TRANSLATE_NOOP("Sentences",
                         "The pipe's bore, length, roughness or fittings are not those of a "
                         "pipe.")},
      {"airflow.input.annulus",
       QT_TRANSLATE_NOOP("Sentences",
                         "The hole, the pipe, the wall or the unsealed share is not one that can "
                         "be.")},
      {"airflow.input.number",
       QT_TRANSLATE_NOOP("Sentences", "The number must lie between {least} and {most}.")},
      {"airflow.input.air",
       QT_TRANSLATE_NOOP("Sentences", "The air's temperature or pressure is out of all range.")},
      {"airflow.input.ground-size",
       QT_TRANSLATE_NOOP("Sentences",
                         "The ground's answer needs {needed} numbers for so many sumps; {given} "
                         "are given.")},
      {"airflow.input.ground",
       QT_TRANSLATE_NOOP("Sentences",
                         "The ground's answer is not one that ground gives: drawing air must "
                         "always take suction.")},
      {"airflow.input.watch",
       QT_TRANSLATE_NOOP("Sentences",
                         "What is needed at {point} cannot be judged: a number is missing or "
                         "nothing is asked for.")},

      // The duty point.
      {"airflow.where.leg", QT_TRANSLATE_NOOP("Sentences", "the pipe from sump {sump}")},
      {"airflow.where.line", QT_TRANSLATE_NOOP("Sentences", "the pipe of {fan}")},
      {"airflow.not-solved",
       QT_TRANSLATE_NOOP("Sentences",
                         "No duty point was found; pressures still differ by {residual}.")},
      {"airflow.no-flow",
       QT_TRANSLATE_NOOP("Sentences", "Every valve is closed: the fan draws nothing.")},
      {"airflow.flows-back",
       QT_TRANSLATE_NOOP("Sentences",
                         "{flow} of air flow backwards through {where}, into the ground.")},
      {"airflow.outside-curve",
       QT_TRANSLATE_NOOP("Sentences",
                         "{fan} would work at {flow}, outside its curve, which ends at {last}: the "
                         "figures are drawn on beyond it.")},
      {"airflow.annulus-leaks",
       QT_TRANSLATE_NOOP("Sentences",
                         "Of the {total} drawn from sump {sump}, {leak} ({share:0}) come in beside "
                         "the pipe, not from under the floor. Seal the pipe to the inner leaf.")},
      {"airflow.leg-takes-most",
       QT_TRANSLATE_NOOP("Sentences",
                         "Sump {sump} takes {share:0} of the air of {fan}, which draws from {legs} "
                         "sumps: throttle its leg, or the others starve.")},
      {"airflow.speed.noise",
       QT_TRANSLATE_NOOP("Sentences",
                         "Air runs at {speed} in {where}; from {limit} on the rush at the outlet "
                         "is heard.")},
      {"airflow.speed.condensate",
       QT_TRANSLATE_NOOP("Sentences",
                         "Air runs at {speed} in {where}; from {limit} on it carries condensate "
                         "up instead of letting it run back. Use a wider pipe or a smaller fan.")},
      {"airflow.stuck-open",
       QT_TRANSLATE_NOOP("Sentences",
                         "If the valve of sump {sump} stands open, the suction in sump {robbed} "
                         "falls from {before} to {after}.")},

      // Which fan suits.
      {"airflow.choice.holds",
       QT_TRANSLATE_NOOP("Sentences",
                         "Holds {suction:down} at {point}, the weakest place; {needed} are "
                         "needed.")},
      {"airflow.choice.falls-short",
       QT_TRANSLATE_NOOP("Sentences",
                         "Gives only {suction:down} at {point}; {needed} are needed.")},
      {"airflow.choice.floor-held",
       QT_TRANSLATE_NOOP("Sentences", "Holds {share:0,down} of the floor.")},
      {"airflow.choice.floor-short",
       QT_TRANSLATE_NOOP("Sentences",
                         "Holds {share:0,down} of the floor; {needed:0} count as all of it.")},
      {"airflow.choice.least-power",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Of the {suiting} fans that suit, the first takes the least power: {power}.")},
      {"airflow.choice.least-power-noisy",
       QT_TRANSLATE_NOOP("Sentences",
                         "None is quiet. Of the {suiting} fans that do hold the floor, the first "
                         "takes the least power: {power}.")},
      {"airflow.choice.only-one",
       QT_TRANSLATE_NOOP("Sentences", "The first is the only one listed that suits.")},
      {"airflow.choice.none",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "None of those listed suits; the first comes nearest. Look for a leak, add "
           "a sump, or use a wider pipe.")},
  });
  return rows;
}

}  // namespace sumpwright::words
