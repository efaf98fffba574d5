// Sentences on files that cannot be read or written, on rule sheets that are not found, on pictures
// to trace and on what was left out of drawings and maps.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> fileSentences() {
  static constexpr auto rows = std::to_array<Sentence>({
      {"file.not-found", QT_TRANSLATE_NOOP("Sentences", "There is no file {file}.")},
      {"file.folder", QT_TRANSLATE_NOOP("Sentences", "{file} is a folder, not a file.")},
      {"file.not-readable", QT_TRANSLATE_NOOP("Sentences", "{file} could not be read: {reason}.")},
      {"file.too-large",
       QT_TRANSLATE_NOOP("Sentences", "{file} is larger than {limit} MiB, the most that is read.")},
      {"file.not-writable",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{file} could not be written: {reason}. What was there before is unchanged.")},
      {"file.kept-unusable",
       QT_TRANSLATE_NOOP("Sentences", "The kept work in {file} cannot be used.")},
      {"file.kept-taken",
       QT_TRANSLATE_NOOP("Sentences",
                         "The kept work in {file} has been taken up by another window.")},
      {"file.kept-not-removed",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The kept work in {file}, which is no longer needed, could not be removed. "
           "It will be offered again.")},
      {"file.sheet-unknown",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "There is no rule sheet “{sheet}”. Known are: {known}. Another sheet is never "
           "taken in its place.")},
      {"file.sheet-unusable",
       QT_TRANSLATE_NOOP("Sentences", "The rule sheet in {file} cannot be used.")},
      {"file.sheet-copy-unusable",
       QT_TRANSLATE_NOOP("Sentences",
                         "The copy of its rule sheet that the job holds cannot be used.")},
      {"file.sheet-twice",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Two files hold the rule sheet “{sheet}”: {file} and {other}. Remove one.")},
      {"file.fans-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "There is no fan table “{table}”. Known are: {known}. Another is never "
                         "taken in its place.")},
      {"file.firm-unusable",
       QT_TRANSLATE_NOOP("Sentences", "The firm's file {file} cannot be used: {reason}.")},
      {"file.no-fan",
       QT_TRANSLATE_NOOP("Sentences",
                         "There is no fan “{fan}” in the fan tables of this machine. Choose one "
                         "that is, or put the table where it is found.")},
      {"file.fans-unusable",
       QT_TRANSLATE_NOOP("Sentences", "The fan table in {file} cannot be used.")},
      {"file.fans-twice",
       QT_TRANSLATE_NOOP("Sentences",
                         "Two files hold the fan table “{table}”: {file} and {other}. Remove "
                         "one.")},
      {"file.prices-unknown",
       QT_TRANSLATE_NOOP("Sentences",
                         "There is no price book “{book}”. Known are: {known}. Another is never "
                         "taken in its place.")},
      {"file.prices-unusable",
       QT_TRANSLATE_NOOP("Sentences", "The price book in {file} cannot be used.")},
      {"file.prices-built-in",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The price book is part of the program and stays as it is. Make a book of your "
           "own of it; then its prices can be changed.")},
      {"file.prices-changed",
       QT_TRANSLATE_NOOP("Sentences",
                         "The price book {file} was written by somebody else since, so the change "
                         "is not taken back.")},
      {"file.prices-taken",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "There is another price book “{book}” already ({file}). Give the new one an id "
           "of its own, or take the old one away.")},
      {"file.prices-twice",
       QT_TRANSLATE_NOOP("Sentences",
                         "Two files hold the price book “{book}”: {file} and {other}. Remove "
                         "one.")},
      {"underlay.not-found", QT_TRANSLATE_NOOP("Sentences",
                                               "There is no picture {file}. The plan is shown "
                                               "without it; put it back, or choose it again.")},
      {"underlay.kind",
       QT_TRANSLATE_NOOP(
           "Sentences", "{file} is no picture that can be traced: PNG, JPEG, SVG and PDF can be.")},
      {"underlay.broken",
       QT_TRANSLATE_NOOP("Sentences", "The picture {file} could not be read: {reason}.")},
      {"underlay.locked",
       QT_TRANSLATE_NOOP("Sentences",
                         "{file} is locked with a password. Ask for a copy without one.")},
      {"underlay.page",
       QT_TRANSLATE_NOOP("Sentences", "{file} has no page {page}: its pages are 1 to {pages}.")},
      {"underlay.too-large",
       QT_TRANSLATE_NOOP("Sentences",
                         "{file} is too large: at most {most} million pixels and {side} along a "
                         "side are read. Save a smaller copy.")},
      {"underlay.scale",
       QT_TRANSLATE_NOOP("Sentences",
                         "The picture’s scale is none: its metres per pixel must be above 0.")},
      {"underlay.given-up",
       QT_TRANSLATE_NOOP("Sentences",
                         "The picture {file} is not shown: reading it was cancelled.")},
      {"underlay.corners",
       QT_TRANSLATE_NOOP("Sentences",
                         "The four corners do not make a rectangle seen at a slant: they must go "
                         "round it in order, no three in a line, all in or near the picture, and "
                         "both sides must be longer than nothing.")},
      {"import.too-large",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The file is larger than {limit} MiB, the most that is read of a drawing or a map.")},
      {"import.choice",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The length of a unit, and how near ends must be to meet, must be above 0.")},
      {"import.others", QT_TRANSLATE_NOOP("Sentences", "{n} × left out for other reasons.")},
      {"import.ring.no-area",
       QT_TRANSLATE_NOOP("Sentences", "{n} × left out: an outline without area.")},
      {"import.ring.small",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{n} × left out: an outline smaller than {least}. If all are, the unit may be wrong.")},
      {"import.ring.large",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{n} × left out: an outline longer than {most}. If all are, the unit may be wrong.")},
      {"import.ring.many-corners",
       QT_TRANSLATE_NOOP("Sentences", "{n} × left out: an outline of more than {most} corners.")},
      {"import.ring.crosses-itself",
       QT_TRANSLATE_NOOP("Sentences",
                         "{n} × left out: an outline that crosses or touches itself.")},
      {"import.ring.hole",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{n} × left out: a hole that does not lie within its outline, or is none.")},
      {"import.ring.many-holes",
       QT_TRANSLATE_NOOP("Sentences", "{n} × left out: a hole beyond an outline’s first {most}.")},
      {"import.ring.many",
       QT_TRANSLATE_NOOP("Sentences", "{n} × left out: more outlines than the {most} largest.")},
      {"import.line.loose",
       QT_TRANSLATE_NOOP("Sentences", "{n} × left out: a line with an end that meets no other.")},
      {"import.line.inner",
       QT_TRANSLATE_NOOP("Sentences", "{n} × left out: a line within an outline, or between two.")},
      {"import.dxf.binary",
       QT_TRANSLATE_NOOP("Sentences",
                         "This is not a DXF file as text. Ask for one saved as ASCII DXF.")},
      {"import.dxf.not-dxf",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "This is not a DXF file, or it is damaged: line {line} should be a group code.")},
      {"import.dxf.no-entities",
       QT_TRANSLATE_NOOP("Sentences",
                         "This DXF file has no section of entities: nothing is drawn in it.")},
      {"import.dxf.ends-early",
       QT_TRANSLATE_NOOP("Sentences",
                         "The file ends before its end mark: what came after is missing.")},
      {"import.dxf.other-kind",
       QT_TRANSLATE_NOOP("Sentences",
                         "{n} × left out: {kind}. Only lines and polylines are taken.")},
      {"import.dxf.mesh", QT_TRANSLATE_NOOP("Sentences", "{n} × left out: a surface mesh.")},
      {"import.dxf.on-paper",
       QT_TRANSLATE_NOOP("Sentences",
                         "{n} × left out: drawn on a sheet of paper, not in the model.")},
      {"import.dxf.hidden",
       QT_TRANSLATE_NOOP("Sentences", "{n} × left out: hidden in the drawing.")},
      {"import.dxf.number",
       QT_TRANSLATE_NOOP("Sentences",
                         "{n} × left out: a coordinate that is no number, or far too large.")},
      {"import.dxf.tilted",
       QT_TRANSLATE_NOOP("Sentences", "{n} × left out: drawn on a tilted plane.")},
      {"import.geojson.not-json",
       QT_TRANSLATE_NOOP("Sentences",
                         "This is not a GeoJSON file, or it is damaged: it is not JSON.")},
      {"import.geojson.not-geojson",
       QT_TRANSLATE_NOOP("Sentences", "This is JSON, but not GeoJSON: it holds no geometry.")},
      {"import.geojson.crs",
       QT_TRANSLATE_NOOP("Sentences",
                         "This map’s coordinates are of another kind than longitude and latitude "
                         "(WGS 84). Ask for one in those.")},
      {"import.geojson.not-degrees",
       QT_TRANSLATE_NOOP("Sentences",
                         "This map has coordinates that are no longitude and latitude in degrees: "
                         "they lie beyond ±180 or ±90.")},
      {"import.geojson.coordinates",
       QT_TRANSLATE_NOOP("Sentences",
                         "{n} × left out: a polygon whose coordinates cannot be read.")},
      {"import.geojson.other-kind",
       QT_TRANSLATE_NOOP("Sentences", "{n} × left out: {kind}. Only polygons are taken.")},
      {"import.geojson.far",
       QT_TRANSLATE_NOOP("Sentences",
                         "{n} × left out: more than {most:0} from the largest outline.")},
  });
  return rows;
}

}  // namespace sumpwright::words
