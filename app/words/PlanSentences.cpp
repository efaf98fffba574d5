// Sentences on job files and on plans that contradict themselves or miss something: what is wrong,
// what it means or what to do.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> planSentences() {
  static constexpr auto rows = std::to_array<Sentence>({
      // Reading a job file
      {"job.too-large",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The file is larger than a job can be ({bytes} bytes; at most {limit}). It was not "
           "read. Photos and scans belong beside the job file, not in it.")},
      {"job.text.not-utf8", QT_TRANSLATE_NOOP("Sentences",
                                              "Byte {byte} of the file is not UTF-8 text, so the "
                                              "file was not read. Save it again as UTF-8.")},
      {"job.not-json",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The file is not sound JSON: reading stopped at line {line}, column {column}, near "
           "\"{near}\". Put that place right, or open an earlier copy.")},
      {"job.too-deep", QT_TRANSLATE_NOOP("Sentences",
                                         "Lists and objects are nested more than {limit} deep "
                                         "here; no job needs that. The file was not read.")},
      {"job.key.twice", QT_TRANSLATE_NOOP("Sentences",
                                          "The key \"{key}\" stands twice in one object, so it "
                                          "cannot be said which is meant. Remove one of them.")},
      {"job.text.too-long",
       QT_TRANSLATE_NOOP("Sentences", "A text here is longer than {limit} bytes. Shorten it.")},
      {"job.text.control", QT_TRANSLATE_NOOP("Sentences",
                                             "A text here holds control characters, which can be "
                                             "neither shown nor printed. Type it again.")},
      {"job.number.not-finite",
       QT_TRANSLATE_NOOP("Sentences",
                         "\"{number}\" is not a number that can be used: infinite, not a number, "
                         "or too large. Put the measured figure, or leave the key out.")},
      {"job.number.range", QT_TRANSLATE_NOOP("Sentences",
                                             "{number} is outside what this may be ({low} to "
                                             "{high}). Check the figure and its unit.")},
      {"job.type", QT_TRANSLATE_NOOP("Sentences", "Something else is needed here: {wanted}.")},
      {"job.kind.object", QT_TRANSLATE_NOOP("Sentences", "an object in braces")},
      {"job.kind.list", QT_TRANSLATE_NOOP("Sentences", "a list in square brackets")},
      {"job.kind.text", QT_TRANSLATE_NOOP("Sentences", "text in quotes")},
      {"job.kind.word", QT_TRANSLATE_NOOP("Sentences", "a word in quotes")},
      {"job.kind.number", QT_TRANSLATE_NOOP("Sentences", "a number")},
      {"job.kind.whole-number", QT_TRANSLATE_NOOP("Sentences", "a whole number")},
      {"job.kind.yes-no", QT_TRANSLATE_NOOP("Sentences", "true or false")},
      {"job.kind.point", QT_TRANSLATE_NOOP("Sentences", "a point, [x, y]")},
      {"job.kind.four-points",
       QT_TRANSLATE_NOOP("Sentences", "four points, [[x, y], [x, y], [x, y], [x, y]]")},
      {"job.word.unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "\"{word}\" is not a word known here. Known are: {allowed}.")},
      {"job.key.missing", QT_TRANSLATE_NOOP("Sentences",
                                            "The key \"{key}\" is missing here; without it nothing "
                                            "can be said of this thing. Add it.")},
      {"job.key.unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "The key \"{key}\" is not known to this version. It is kept and written "
                         "again, but nothing is made of it; check its spelling.")},
      {"job.too-many",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The list has {count} entries; at most {limit} are read. The file was not read.")},
      {"job.format", QT_TRANSLATE_NOOP("Sentences",
                                       "The file is JSON but does not call itself a job "
                                       "(\"format\": \"sumpwright.job\"). Open another file.")},
      {"job.version.newer",
       QT_TRANSLATE_NOOP("Sentences",
                         "The file is of version {version}; this program reads version {known}. "
                         "Open it with a newer program: read here, parts of it would be lost.")},
      {"job.version.unknown",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "There is no version {version} of the job format; this program reads version {known}.")},
      {"job.walls.count", QT_TRANSLATE_NOOP("Sentences",
                                            "{walls} walls are listed for {edges} edges. List one "
                                            "wall per edge, in order, or leave the walls out.")},
      {"job.reading.confirm",
       QT_TRANSLATE_NOOP("Sentences",
                         "A reading of {value} Bq/m³ is outside {low} to {high}. Look at the "
                         "laboratory's sheet again and confirm it.")},
      {"job.more", QT_TRANSLATE_NOOP("Sentences",
                                     "{count} more were found and are left out here. Put these "
                                     "right first, then check again.")},
      // Ids, dates, sheet, survey
      {"plan.id.empty",
       QT_TRANSLATE_NOOP("Sentences",
                         "Something has no id, so nothing else can refer to it. Give it one.")},
      {"plan.id.twice", QT_TRANSLATE_NOOP("Sentences",
                                          "The id \"{id}\" is already taken (at {first}). "
                                          "Everything in a job needs an id of its own.")},
      {"plan.date.bad",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "\"{date}\" is not a date of the calendar. Write it as year-month-day, 2026-03-31.")},
      {"plan.rule-sheet.none",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "No rule sheet is named, so there is nothing to judge places by. Choose one.")},
      {"plan.survey.method-unknown",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "How the house was measured is not stated, so nobody can say how near a margin is too "
           "close to call. State tape, laser, traced picture or map outline.")},
      // Leave to work, field book, underlay, dimensions
      {"plan.permissions.unknown",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Whether the house is protected, in a conservation area, a flat or let to a tenant has "
           "not been asked in full. Ask before anything is drilled: others may have to agree.")},
      {"plan.permissions.no-consent",
       QT_TRANSLATE_NOOP("Sentences",
                         "{what}, and no consent is recorded. Write down who agreed, when, and "
                         "where it is written, before anything is drilled.")},
      {"permission.protected_structure",
       QT_TRANSLATE_NOOP("Sentences", "The house is a protected or listed structure")},
      {"permission.conservation_area",
       QT_TRANSLATE_NOOP("Sentences", "The house stands in a conservation area")},
      {"permission.flats", QT_TRANSLATE_NOOP("Sentences", "The building is in flats")},
      {"permission.tenanted", QT_TRANSLATE_NOOP("Sentences", "The house is let")},
      {"plan.eaves.wildlife",
       QT_TRANSLATE_NOOP("Sentences",
                         "Bats or nests were found at the eaves. Stop, and ask the wildlife "
                         "authority before a riser is fixed there.")},
      {"plan.eaves.not-looked", QT_TRANSLATE_NOOP("Sentences",
                                                  "The riser goes to the eaves, and nobody has "
                                                  "looked for bats or nests there. Look first.")},
      {"plan.taped.wall",
       QT_TRANSLATE_NOOP("Sentences",
                         "Wall {wall} of the field book is {length} long and points nowhere sure. "
                         "A taped wall has a length over 0 and a direction.")},
      {"plan.taped.count",
       QT_TRANSLATE_NOOP("Sentences",
                         "The field book has {taped} walls, the outline {walls}. It no longer says "
                         "how this outline was measured.")},
      {"plan.taped.poor",
       QT_TRANSLATE_NOOP("Sentences",
                         "The outline as taped misses its start by {gap}, 1 in {one_in}. Better "
                         "than 1 in {least} is usual: measure the doubtful walls again.")},
      {"plan.dimension.no-thing",
       QT_TRANSLATE_NOOP("Sentences",
                         "The dimension {dimension} is tied to \"{thing}\", which is not there or "
                         "has no such end. Tie it to something else, or remove it.")},
      {"plan.underlay.path",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The picture under the plan is named \"{path}\". Keep it beside the job file and name "
           "it from there, with forward slashes, so that the two travel together.")},
      {"plan.underlay.scale",
       QT_TRANSLATE_NOOP("Sentences",
                         "A scale of {scale} metres to the pixel cannot be. Set it by two points "
                         "and the length between them.")},
      {"plan.underlay.rectangle",
       QT_TRANSLATE_NOOP("Sentences",
                         "The rectangle the picture is straightened by is {width} by {height}. "
                         "Both must be over 0.")},
      // Looked for
      {"looked.standby_pipe", QT_TRANSLATE_NOOP("Sentences", "a standby pipe")},
      {"looked.open_flue", QT_TRANSLATE_NOOP("Sentences", "open-flued appliances")},
      {"plan.looked.not",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Not looked for: {kind}. No wall can be called clear before somebody has looked.")},
      {"plan.looked.contradicted",
       QT_TRANSLATE_NOOP("Sentences",
                         "The survey says that none was found, yet {thing} is drawn ({kind}). Put "
                         "one of the two right.")},
      {"plan.looked.not-drawn",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The survey says that something was found ({kind}), but none is drawn with its place, "
           "so no distance to it can be judged. Draw it, or say that it was not looked for.")},
      {"plan.flue.not-looked",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Nobody has looked for appliances that take their air from the room. Take them to be "
           "there: a flue spillage test is needed before a fan is left running.")},
      // House
      {"plan.house.negative",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A thickness of {thickness:3} cannot be. Put the measured figure, or leave it out.")},
      {"plan.house.cavity", QT_TRANSLATE_NOOP("Sentences",
                                              "The cavity ({cavity:3}) is as wide as the whole "
                                              "wall ({wall:3}). One of the two is wrong.")},
      {"plan.house.barrier-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "Whether the house has a radon barrier is not known. Take it to have one, "
                         "and do not pierce it unseen.")},
      {"plan.house.footing-reversed",
       QT_TRANSLATE_NOOP("Sentences",
                         "The footing top is said to lie between {low} and {high}, which is the "
                         "wrong way round. Swap the two.")},
      {"plan.house.footing-unknown",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "How deep the top of the footing lies is not known; {low} to {high} from the floor is "
           "assumed. See it in a trial pit before the core is drilled.")},
      {"plan.house.year-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "The year the house was built is not known, and nobody has searched for a "
                         "standby sump. In Ireland new homes must have one since 1 July {since}: "
                         "search before siting a new one.")},
      {"plan.house.year-after-survey",
       QT_TRANSLATE_NOOP("Sentences",
                         "The house is said to be built in {year}, after it was surveyed "
                         "({surveyed}). One of the two is wrong.")},
      {"plan.standby.not-searched",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The house is of {year}, and nobody has searched for a standby sump. In Ireland new "
           "homes must have one since 1 July {since}: search before siting a new one.")},
      {"plan.standby.where-unknown",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A standby sump was found, but where is not noted. Note the place of its cap.")},
      // Rings and walls
      {"plan.ring.none",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "No outline of the house is drawn yet. Draw the outside face of its walls first.")},
      {"plan.ring.open",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The outline is not closed yet. Measure on until it comes back to its first corner.")},
      {"plan.ring.corners",
       QT_TRANSLATE_NOOP("Sentences",
                         "An outline needs at least three corners; this one has {corners}.")},
      {"plan.ring.short-edge", QT_TRANSLATE_NOOP("Sentences",
                                                 "Two corners lie {length:1} apart; a wall is at "
                                                 "least {least:0} long. Remove one of them.")},
      {"plan.ring.self-contact",
       QT_TRANSLATE_NOOP("Sentences",
                         "The outline crosses or touches itself near ({x}, {y}). Check the corners "
                         "around that point.")},
      {"plan.ring.turned",
       QT_TRANSLATE_NOOP("Sentences",
                         "The outline runs clockwise. Outside walls are walked with the house on "
                         "the left, counter-clockwise: list the corners the other way round.")},
      {"plan.courtyard.turned",
       QT_TRANSLATE_NOOP("Sentences",
                         "The courtyard runs counter-clockwise. Its walls are walked with the "
                         "house on the left, clockwise: list the corners the other way round.")},
      {"plan.courtyard.outside",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The courtyard does not lie wholly inside the outline. Check its corners.")},
      {"plan.courtyard.overlap",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The courtyard overlaps the courtyard of ring {other}. Check the corners of both.")},
      {"plan.walls.count",
       QT_TRANSLATE_NOOP("Sentences",
                         "{walls} walls stand for {edges} edges. There must be one per edge.")},
      {"plan.wall.thickness",
       QT_TRANSLATE_NOOP("Sentences",
                         "A wall thickness of {thickness:3} cannot be; it must be over 0 and no "
                         "more than {most:1}. Check the figure and its unit.")},
      {"plan.wall.free-depth",
       QT_TRANSLATE_NOOP("Sentences",
                         "A free depth of {depth} cannot be. Measure from the wall outwards; 0 "
                         "means that something stands against it.")},
      {"plan.wall.thickness-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "The wall thickness is not known ({walls}); {assumed} is assumed. Measure "
                         "it at a door or window.")},
      {"plan.wall.foundation-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "What the wall stands on is not known ({walls}). No place on it can be "
                         "called clear before a trial pit or the drawings show it.")},
      {"plan.wall.ground-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "Whose ground lies outside is not known ({walls}). No place there can be "
                         "called clear before that is settled.")},
      {"plan.wall.free-depth-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "How much free room there is outside is not known ({walls}). Measure it "
                         "square to the wall.")},
      {"plan.wall.layer-thickness",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A layer of the wall is {thickness:3} thick. A layer has a thickness over 0.")},
      {"plan.wall.layers-sum",
       QT_TRANSLATE_NOOP("Sentences",
                         "The layers of the wall come to {sum:3}, yet it is said to be "
                         "{thickness:3} thick. One of the two is wrong.")},
      {"plan.wall.external-insulation",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "There is insulation outside on {walls}. Use long fixings and a collar, and do not "
           "crush the board; its fire barriers and its warranty are to be kept.")},
      {"plan.wall.timber-frame", QT_TRANSLATE_NOOP("Sentences",
                                                   "There is a timber frame in {walls}. Core below "
                                                   "the sole plate, never through or above it.")},
      {"plan.wall.stone",
       QT_TRANSLATE_NOOP("Sentences",
                         "There is stone in {walls}. Old stone walls are {=0.45 m} to {=0.60 m} "
                         "thick and loose inside: bring a barrel extension, and expect the core to "
                         "break up.")},
      {"plan.ground.off-wall",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A ground level is given at {offset} along a wall {length} long. Check the offset.")},
      {"plan.ground.near-dpc",
       QT_TRANSLATE_NOOP("Sentences",
                         "The ground stands {under} under the damp-proof course at {offset} along "
                         "the wall; at least {least} is wanted. It may bridge it: tell the client, "
                         "and do not raise it further.")},
      {"plan.feature.no-wall",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} is said to be in edge {edge} of ring {ring}, which does not "
                         "exist. Name the wall it is in.")},
      {"plan.feature.off-wall", QT_TRANSLATE_NOOP("Sentences",
                                                  "{thing} runs from {from} to {to} along a wall "
                                                  "{length} long. Check its offset and width.")},
      {"plan.feature.width",
       QT_TRANSLATE_NOOP("Sentences", "{thing} is {width} wide. A width is 0 or more.")},
      // Openings and services
      {"plan.opening.no-wall",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} is said to be in edge {edge} of ring {ring}, which does not "
                         "exist. Name the wall it is in.")},
      {"plan.opening.off-wall", QT_TRANSLATE_NOOP("Sentences",
                                                  "{thing} runs from {from} to {to} along a wall "
                                                  "{length} long. Check its offset and width.")},
      {"plan.opening.width",
       QT_TRANSLATE_NOOP("Sentences", "{thing} is {width} wide. An opening has a width over 0.")},
      {"plan.opening.sill-above-head",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The sill of {thing} ({sill}) is not below its head ({head}). Swap or correct them.")},
      {"plan.opening.own-floor",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{thing} is of storey {storey} and goes up to {height} only. Heights are all taken from "
           "the finished floor of the ground storey, and that floor upstairs stands {floor} or "
           "more above it (own figure): add the height of its own floor.")},
      {"plan.opening.upstairs",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{thing} is of the ground storey and begins {height} above its floor. Is it of the "
           "storey above? Then say so: what stands {floor} up or more (own figure) seldom is of "
           "this one.")},
      {"plan.opening.overlap",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} and {other} overlap by {common} on one wall of one storey. Check "
                         "their offsets and widths.")},
      {"plan.service.no-wall",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} is said to enter through edge {edge} of ring {ring}, which does "
                         "not exist. Name the wall it enters by.")},
      {"plan.service.off-wall",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{thing} is said to enter at {from} along a wall {length} long. Check the offset.")},
      {"plan.service.run-without-points",
       QT_TRANSLATE_NOOP("Sentences",
                         "The run of {thing} is marked as drawn, but no line is drawn. Draw it, or "
                         "mark it as unknown.")},
      {"plan.service.run-contradicted",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A run of {thing} is drawn, yet it is not marked as drawn. Put one of the two right.")},
      {"plan.service.run-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "Nobody knows where {thing} runs in the ground. The walls towards the "
                         "street cannot be called clear before it is located.")},
      {"plan.service.nowhere",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{thing} is listed, but neither its entry nor its run is drawn. Find and draw them.")},
      {"plan.service.not-located",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{thing} is drawn, but not located: a line on a plan is no trench. Have it "
           "traced and marked on the ground before anything is dug or drilled.")},
      {"plan.service.no-record",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} is marked as located, but who located it, when and how is not "
                         "recorded. Write it down: without a record it counts as not located.")},
      {"plan.service.not-a-drain",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} is no drain, yet something is said of it that only a drain has: "
                         "what it carries, its invert or its trap.")},
      {"plan.service.land-drain",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} is a land drain. It lets air into the ground beside it: suction "
                         "may be lost there. Keep the sump away from it.")},
      {"plan.service.drain-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "What {thing} carries, or how deep it lies, is not known. Lift the "
                         "nearest cover and measure the invert.")},
      // Rooms and floors
      {"plan.room.none",
       QT_TRANSLATE_NOOP("Sentences",
                         "No rooms are drawn, so what lies behind the walls cannot be judged. Draw "
                         "at least the rooms along the outside walls.")},
      {"plan.room.corners",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The outline of {thing} has {corners} corners; a room has at least three.")},
      {"plan.room.self-contact",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The outline of {thing} crosses or touches itself near ({x}, {y}). Check its corners.")},
      {"plan.room.outside", QT_TRANSLATE_NOOP("Sentences",
                                              "{area} of {thing} lies outside the house. Check its "
                                              "corners, or those of the outline.")},
      {"plan.room.overlap",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} and {other} overlap by {area}. Check their corners.")},
      {"plan.room.use-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "What {thing} is used as is not known. State it: wet rooms are treated "
                         "otherwise than bedrooms.")},
      {"plan.zone.none",
       QT_TRANSLATE_NOOP("Sentences",
                         "No floor is drawn, so no wall can be called clear. Draw where the floor "
                         "is a slab on the ground and where it is suspended.")},
      {"plan.zone.corners",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The outline of {thing} has {corners} corners; a floor zone has at least three.")},
      {"plan.zone.self-contact",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The outline of {thing} crosses or touches itself near ({x}, {y}). Check its corners.")},
      {"plan.zone.outside", QT_TRANSLATE_NOOP("Sentences",
                                              "{area} of {thing} lies outside the house. Check its "
                                              "corners, or those of the outline.")},
      {"plan.zone.overlap", QT_TRANSLATE_NOOP("Sentences",
                                              "{thing} and {other} overlap by {area}. A floor is "
                                              "of one kind at one place; check their corners.")},
      {"plan.zone.kind-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "What kind of floor {thing} is, is not known. Are there air bricks, does "
                         "it bounce, does it sound hollow? State it.")},
      {"plan.zone.oversite-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} is a suspended floor, and whether the ground under it is sealed "
                         "is not known. Look under it.")},
      {"plan.zone.own-build",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} was built apart from the house, and its own floor level, slab or "
                         "barrier is not known. Do not take them to be those of the house.")},
      {"plan.zone.deep",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{thing} lies {under} under the ground outside. A floor more than {most} below it is "
           "not cored from outside: think of a sump from inside, and of the walls in the ground.")},
      // Inner walls, heating, outside things
      {"plan.inner-wall.line",
       QT_TRANSLATE_NOOP(
           "Sentences", "The inner wall {thing} has no length. Draw it with at least two points.")},
      {"plan.inner-wall.thickness",
       QT_TRANSLATE_NOOP("Sentences",
                         "The inner wall {wall} is {thickness:3} thick; it must be over 0 and no "
                         "more than {most:1}.")},
      {"plan.inner-wall.in-opening",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} ends in front of {other}. Was one of the two taped from the "
                         "wrong corner? Measure both again.")},
      {"plan.inner-door.no-wall",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The door {thing} is said to be in the inner wall \"{wall}\", which does not exist.")},
      {"plan.inner-door.off-wall",
       QT_TRANSLATE_NOOP("Sentences",
                         "The door {thing} runs from {from} to {to} along an inner wall {length} "
                         "long. Check its offset and width.")},
      {"plan.inner-door.width",
       QT_TRANSLATE_NOOP("Sentences",
                         "The door {thing} is {width} wide. A door has a width over 0.")},
      {"plan.rising-wall.line",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The rising wall {thing} has no length. Draw it with at least two points.")},
      {"plan.rising-wall.thickness",
       QT_TRANSLATE_NOOP("Sentences",
                         "The rising wall {wall} is {thickness:3} thick; it must be over 0 and no "
                         "more than {most:1}.")},
      {"plan.rising-wall.gap",
       QT_TRANSLATE_NOOP("Sentences",
                         "A gap of the rising wall {thing} runs from {from} to {to}; the wall is "
                         "{length} long. Check the gap.")},
      {"plan.radiator.no-wall", QT_TRANSLATE_NOOP("Sentences",
                                                  "{thing} is said to hang on edge {edge} of ring "
                                                  "{ring}, which does not exist. Name its wall.")},
      {"plan.radiator.off-wall", QT_TRANSLATE_NOOP("Sentences",
                                                   "{thing} runs from {from} to {to} along a wall "
                                                   "{length} long. Check its offset and width.")},
      {"plan.radiator.width",
       QT_TRANSLATE_NOOP("Sentences", "{thing} is {width} wide. A radiator has a width over 0.")},
      {"plan.radiator.line",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{thing} is neither on an outside wall nor drawn from end to end. Place it.")},
      {"plan.radiator.twice-placed",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{thing} is placed twice, on an outside wall and along a line. Remove one of the two.")},
      {"plan.heating-pipe.line",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The heating pipe {thing} has no length. Draw it with at least two points.")},
      {"plan.outside.points",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} is drawn with {points} points; it needs at least {least}.")},
      {"plan.outside.self-contact",
       QT_TRANSLATE_NOOP("Sentences",
                         "The outline of {thing} crosses or touches itself. Check its points.")},
      {"plan.outside.overhead",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} is an overhead line. Keep ladder and riser well away: {=1 m} is "
                         "the least here (own figure), and its operator may want more.")},
      // Suction, fan, pipe, price
      {"plan.suction.none",
       QT_TRANSLATE_NOOP("Sentences",
                         "A suction of {suction} is none. Put one above 0 Pa, or leave it out: the "
                         "program's own figure is taken then.")},
      {"plan.suction.limit-above-target",
       QT_TRANSLATE_NOOP("Sentences",
                         "The limit of {limit} is above the target of {target}. What is held has "
                         "at least the limit, what is good the target: put the limit lower.")},
      {"plan.pit.size",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A pit of {pit} litres is none that a crew digs: {least} to {most} litres. Check it.")},
      {"plan.ground.spread",
       QT_TRANSLATE_NOOP("Sentences",
                         "From {low} to {high} is no range of a figure of the ground. Put the low "
                         "end first and above nothing, or leave it out.")},
      {"plan.test.no-hole",
       QT_TRANSLATE_NOOP("Sentences",
                         "A reading is of the test hole \"{hole}\", which is not on the plan. "
                         "Place the hole, or take the reading out.")},
      {"plan.test.hole-twice",
       QT_TRANSLATE_NOOP("Sentences",
                         "The hole \"{hole}\" is read twice in one test. Keep one reading; put the "
                         "other in a test of its own.")},
      {"plan.test.sd",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A reading's standard deviation of {sd} is none. Put one above 0 Pa, or leave it out.")},
      {"plan.test.over-pit",
       QT_TRANSLATE_NOOP("Sentences",
                         "In the hole \"{hole}\" {suction} was read, more than the {pit} in the "
                         "pit. Check both, and that the gauge's tubes were not crossed.")},
      {"plan.test.reading-most",
       QT_TRANSLATE_NOOP("Sentences",
                         "In the hole \"{hole}\" {suction} was read, more than any test fan leaves "
                         "under a floor ({most:0}). Check the figure and the gauge's unit.")},
      {"plan.test.sump-unknown",
       QT_TRANSLATE_NOOP(
           "Sentences", "Of the pressure test \"{test}\" it is not said which sump it drew from.")},
      {"plan.test.stood-off-ring",
       QT_TRANSLATE_NOOP("Sentences",
                         "The sump of the pressure test \"{test}\" is said to have stood at "
                         "{chainage} of ring {ring}, which is on no wall. Put where it stood.")},
      {"plan.test.stood-outside",
       QT_TRANSLATE_NOOP("Sentences",
                         "The sump of the pressure test \"{test}\" is said to have stood outside "
                         "the house. Put where it stood.")},
      {"plan.test.no-sump", QT_TRANSLATE_NOOP("Sentences",
                                              "The pressure test \"{test}\" drew from the sump "
                                              "\"{sump}\", which does not exist. Name the sump.")},
      {"plan.test.flow", QT_TRANSLATE_NOOP("Sentences",
                                           "The flow of the pressure test \"{test}\" is not above "
                                           "nothing. Put what was measured, or leave it out.")},
      {"plan.test.flow-unknown",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The flow of the pressure test \"{test}\" is not stated. Without it the readings show "
           "how suction falls off, not how much air the ground gives.")},
      {"plan.test.pit",
       QT_TRANSLATE_NOOP("Sentences",
                         "The pit's suction in the pressure test \"{test}\" is not above nothing. "
                         "Put what was measured, or leave it out.")},
      {"plan.test.no-readings",
       QT_TRANSLATE_NOOP("Sentences", "The pressure test \"{test}\" has no readings in holes.")},
      {"plan.fan.speed",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A fan at {speed} of its speed cannot be. Put more than 0 % and at most 100 %.")},
      {"plan.fan.curve",
       QT_TRANSLATE_NOOP("Sentences",
                         "Point {point} of the fan's curve is out of order: flow must rise and "
                         "pressure fall from point to point, and neither be below nothing.")},
      {"plan.fan.few-points",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A fan's curve needs {least} points or more. Add some, or take those out.")},
      {"plan.pipe.length",
       QT_TRANSLATE_NOOP("Sentences",
                         "A pipe of {length} is none. Put its length, or leave it out.")},
      {"plan.sump.fall", QT_TRANSLATE_NOOP("Sentences",
                                           "The core at {sump} is to fall by {fall}; it is drilled "
                                           "level within {most}. Check it.")},
      {"plan.discharge.off-ring",
       QT_TRANSLATE_NOOP("Sentences",
                         "The air of sump {sump} is to leave at {chainage} of ring {ring}, which "
                         "is not on the outside walls. Place it again.")},
      {"plan.discharge.other-ring",
       QT_TRANSLATE_NOOP("Sentences",
                         "The air of sump {sump} is to leave on ring {ring}, and its hole is on "
                         "ring {own}: no riser goes from one to the other outside the house. Place "
                         "it on the hole’s own ring.")},
      {"plan.sump.heated-floor",
       QT_TRANSLATE_NOOP("Sentences",
                         "Sump {sump} is to be dug in a heated floor. Choose a place without "
                         "heating: a cupboard, under stairs, a garage.")},
      {"plan.sump.no-supply",
       QT_TRANSLATE_NOOP("Sentences",
                         "The fan of sump {sump} is to be wired from \"{supply}\", which is not on "
                         "the plan. Choose another, or place it.")},
      {"plan.house.footing-above-ground",
       QT_TRANSLATE_NOOP("Sentences",
                         "The footing top is put at {footing:signed} to the floor, which is not in "
                         "the ground ({ground:signed}). Measure it from finished floor level, "
                         "downwards.")},
      {"plan.eaves.overhang",
       QT_TRANSLATE_NOOP("Sentences",
                         "Eaves that stand out from the wall by {overhang} are none: 0 for a roof "
                         "that ends at the wall, up to {most}.")},
      {"plan.eaves.height",
       QT_TRANSLATE_NOOP("Sentences",
                         "Eaves at {eaves} above the floor are none: over 0 and up to {most}. "
                         "Measure from finished floor level.")},
      {"plan.quote.not-decimal",
       QT_TRANSLATE_NOOP("Sentences",
                         "\"{entry}\" is not a decimal number such as 12.50. Use a point, no signs "
                         "for thousands and no currency.")},
      {"plan.quote.negative",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "\"{entry}\" is below nothing. A discount is a line with a negative price.")},
      {"plan.quote.days",
       QT_TRANSLATE_NOOP("Sentences",
                         "A price that holds no day is none. Put a day or more, or leave it out.")},
      {"plan.quote.nothing",
       QT_TRANSLATE_NOOP("Sentences",
                         "The line \"{line}\" of the price names no item and says nothing. Say "
                         "what it is for, or take it out.")},
      {"plan.house.datum",
       QT_TRANSLATE_NOOP("Sentences",
                         "A sill or threshold {level} from the finished floor is none that heights "
                         "are taken from: {most} at most.")},
      {"plan.running.degree-days",
       QT_TRANSLATE_NOOP("Sentences",
                         "{days:0} degree days a year are none: 0 to {most:0} are taken.")},
      {"plan.running.share",
       QT_TRANSLATE_NOOP("Sentences",
                         "The share of house air in what the sump draws is 0 to 1, not {share}.")},
      // Design
      {"plan.barrel.length",
       QT_TRANSLATE_NOOP("Sentences",
                         "A drill barrel of {barrel} is none. Put its length, or leave it out.")},
      {"plan.barrel.short",
       QT_TRANSLATE_NOOP("Sentences",
                         "At {sump} the wall is {path} thick; the drill barrel is {barrel} long. "
                         "Bring an extension, or core from both sides.")},
      {"plan.core.size", QT_TRANSLATE_NOOP("Sentences",
                                           "A core of {core} cannot be drilled through a house "
                                           "wall; it must be {least} to {most}.")},
      {"plan.pipe.none",
       QT_TRANSLATE_NOOP("Sentences",
                         "A pipe of {pipe} outside is none. Put its outside diameter, or leave the "
                         "key out: the rule sheet’s is taken then.")},
      {"plan.pipe.size",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "A pipe of {pipe} outside does not fit a core of {core}. Choose another pipe or core.")},
      {"plan.sump.off-ring",
       QT_TRANSLATE_NOOP("Sentences",
                         "The sump {sump} is placed at {chainage} of ring {ring}, which is not on "
                         "the outside walls. Place it again.")},
      {"plan.sump.no-point",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The sump {sump} lies inside the house, but where is not stated. Place it.")},
      {"plan.sump.outside", QT_TRANSLATE_NOOP("Sentences",
                                              "The sump {sump} is to be dug inside, but its place "
                                              "is not inside the house. Place it again.")},
      {"plan.sump.unknown",
       QT_TRANSLATE_NOOP("Sentences", "There is no sump \"{sump}\" in this job.")},
      {"plan.edit.limit-above-usual",
       QT_TRANSLATE_NOOP("Sentences",
                         "A limit of {limit} is above the target, which is {target} where none is "
                         "typed. Type a target of at least as much first, or take a lower limit.")},
      {"plan.edit.no-edge",
       QT_TRANSLATE_NOOP("Sentences", "There is no wall {edge} on ring {ring} of this plan.")},
      {"plan.edit.no-corner",
       QT_TRANSLATE_NOOP("Sentences", "There is no corner {corner} on ring {ring} of this plan.")},
      {"plan.edit.not-a-place",
       QT_TRANSLATE_NOOP("Sentences", "That is no length or place on a plan of a house.")},
      {"plan.edit.no-space-left",
       QT_TRANSLATE_NOOP("Sentences",
                         "Walls as thick as that leave no space for {thing}, so nothing was "
                         "changed. Check the figure, or draw {thing} anew first.")},
      {"plan.edit.split-through",
       QT_TRANSLATE_NOOP("Sentences",
                         "A wall is not divided in the middle of what stands on it. Choose a place "
                         "beside it.")},
      {"plan.edit.too-few-corners",
       QT_TRANSLATE_NOOP("Sentences", "An outline of three corners cannot lose one.")},
      {"plan.edit.no-gap",
       QT_TRANSLATE_NOOP("Sentences", "There is no gap in that rising wall at this place.")},
      {"plan.edit.no-thing",
       QT_TRANSLATE_NOOP("Sentences",
                         "There is nothing by the id \"{thing}\" here, or nothing that fits.")},
      {"plan.edit.no-point",
       QT_TRANSLATE_NOOP("Sentences",
                         "{thing} has no such point, or no place that could be moved.")},
      {"plan.edit.not-text",
       QT_TRANSLATE_NOOP("Sentences",
                         "This text cannot be kept: it holds characters that can be neither shown "
                         "nor printed, or is far too long.")},
      {"plan.edit.too-many",
       QT_TRANSLATE_NOOP("Sentences", "A job holds at most 10000 of one kind.")},
      {"plan.edit.too-few-points",
       QT_TRANSLATE_NOOP("Sentences", "{thing} has no point to spare.")},
      {"plan.edit.no-room", QT_TRANSLATE_NOOP("Sentences",
                                              "{thing} would run from {from} to {to} along a wall "
                                              "{length} long. It does not fit there.")},
      {"plan.edit.has-outline",
       QT_TRANSLATE_NOOP("Sentences",
                         "There is an outline already. Remove it first, or change it.")},
      {"plan.edit.courtyards-first",
       QT_TRANSLATE_NOOP("Sentences", "There are courtyards in this outline. Remove them first.")},
      {"plan.edit.no-areas",
       QT_TRANSLATE_NOOP("Sentences",
                         "The outline is not closed, or crosses itself: no rooms can be found in "
                         "it. Put the outline right first.")},
      {"plan.edit.floor-whole",
       QT_TRANSLATE_NOOP("Sentences", "The floor is drawn everywhere already.")},
      // What the plan check offers to do
      {"fix.push-back", QT_TRANSLATE_NOOP("Sentences", "Push it back onto its wall.")},
      {"fix.new-id", QT_TRANSLATE_NOOP("Sentences", "Give it an id of its own.")},
      {"fix.turn-ring", QT_TRANSLATE_NOOP("Sentences", "Walk it the other way round.")},
      {"fix.join-corners", QT_TRANSLATE_NOOP("Sentences", "Make one corner of the two.")},
      {"fix.clip", QT_TRANSLATE_NOOP("Sentences", "Keep only what lies in the house.")},
      {"fix.cut-back", QT_TRANSLATE_NOOP("Sentences", "Take away what the other one covers.")},
      {"fix.say-present", QT_TRANSLATE_NOOP("Sentences", "Say that it was found.")},
      {"fix.swap", QT_TRANSLATE_NOOP("Sentences", "Swap the two.")},
      {"fix.take-out", QT_TRANSLATE_NOOP("Sentences", "Take it out.")},
      {"fix.say-drawn", QT_TRANSLATE_NOOP("Sentences", "Mark it as drawn.")},
      {"plan.sump.cored", QT_TRANSLATE_NOOP("Sentences",
                                            "The sump {sump} is cored through a wall, so it cannot "
                                            "be put inside the house.")},
      {"plan.test.unknown",
       QT_TRANSLATE_NOOP("Sentences", "There is no pressure test \"{test}\" in this job.")},
      {"plan.sump.not-cored",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The sump {sump} is not cored through a wall, so it cannot be moved along one.")},
      {"plan.waiver.no-sump",
       QT_TRANSLATE_NOOP("Sentences",
                         "The waiver {waiver} is for the sump \"{sump}\", which does not exist. "
                         "Remove it, or name the sump.")},
      {"plan.waiver.no-rule",
       QT_TRANSLATE_NOOP("Sentences",
                         "The waiver {waiver} names no rule. Say which rule it accepts.")},
      {"plan.waiver.no-reason",
       QT_TRANSLATE_NOOP("Sentences",
                         "The waiver {waiver} gives no reason. Say why the place is accepted.")},
      {"plan.waiver.no-name",
       QT_TRANSLATE_NOOP("Sentences",
                         "The waiver {waiver} gives no name. Say who accepts the place.")},
      {"plan.waiver.no-date",
       QT_TRANSLATE_NOOP("Sentences",
                         "The waiver {waiver} gives no date. Say when the place was accepted.")},
      {"plan.waiver.off-ring", QT_TRANSLATE_NOOP("Sentences",
                                                 "The waiver {waiver} is for {chainage} of ring "
                                                 "{ring}, which is not on the outside walls.")},
      {"plan.waiver.unknown",
       QT_TRANSLATE_NOOP("Sentences", "There is no waiver \"{waiver}\" in this job.")},
  });
  return rows;
}

}  // namespace sumpwright::words
