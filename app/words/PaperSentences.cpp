// What drawings and papers say.

#include <QtGlobal>

#include "words/Sentences.h"

namespace sumpwright::words {
namespace {

constexpr Sentence kSentences[] = {
    {"drawing.area", QT_TRANSLATE_NOOP("Sentences", "{area:1}")},
    {"drawing.chainage", QT_TRANSLATE_NOOP("Sentences", "{chainage:0}")},
    {"drawing.chainage-here", QT_TRANSLATE_NOOP("Sentences", "{chainage}")},
    {"drawing.distance", QT_TRANSLATE_NOOP("Sentences", "{distance:down}")},
    {"drawing.jamb", QT_TRANSLATE_NOOP("Sentences", "the near jamb of {opening}")},
    {"drawing.lane.discharge", QT_TRANSLATE_NOOP("Sentences", "Outlet not placed")},
    {"drawing.lane.hidden", QT_TRANSLATE_NOOP("Sentences", "{count} more: scroll")},
    {"drawing.lane.needed", QT_TRANSLATE_NOOP("Sentences", "{needed}")},
    {"drawing.lane.score", QT_TRANSLATE_NOOP("Sentences", "Score")},
    {"drawing.lane.verdict", QT_TRANSLATE_NOOP("Sentences", "Verdict")},
    {"drawing.length", QT_TRANSLATE_NOOP("Sentences", "{length:bare}")},
    {"drawing.limit", QT_TRANSLATE_NOOP("Sentences", "{needed:bare}")},
    {"drawing.north", QT_TRANSLATE_NOOP("Sentences", "N")},
    {"drawing.room.bathroom", QT_TRANSLATE_NOOP("Sentences", "Bathroom")},
    {"drawing.room.bedroom", QT_TRANSLATE_NOOP("Sentences", "Bedroom")},
    {"drawing.room.dining", QT_TRANSLATE_NOOP("Sentences", "Dining room")},
    {"drawing.room.garage", QT_TRANSLATE_NOOP("Sentences", "Garage")},
    {"drawing.room.hall", QT_TRANSLATE_NOOP("Sentences", "Hall")},
    {"drawing.room.kitchen", QT_TRANSLATE_NOOP("Sentences", "Kitchen")},
    {"drawing.room.living", QT_TRANSLATE_NOOP("Sentences", "Living room")},
    {"drawing.room.office", QT_TRANSLATE_NOOP("Sentences", "Office")},
    {"drawing.room.shower", QT_TRANSLATE_NOOP("Sentences", "Shower")},
    {"drawing.room.stairs", QT_TRANSLATE_NOOP("Sentences", "Stairs")},
    {"drawing.room.store", QT_TRANSLATE_NOOP("Sentences", "Store")},
    {"drawing.room.unknown", QT_TRANSLATE_NOOP("Sentences", "Room")},
    {"drawing.room.utility", QT_TRANSLATE_NOOP("Sentences", "Utility")},
    {"drawing.room.wc", QT_TRANSLATE_NOOP("Sentences", "WC")},
    {"drawing.scale.end", QT_TRANSLATE_NOOP("Sentences", "{length} m")},
    {"drawing.scale.mark", QT_TRANSLATE_NOOP("Sentences", "{length}")},
    {"drawing.score", QT_TRANSLATE_NOOP("Sentences", "{score:0}")},
    {"drawing.service.drain", QT_TRANSLATE_NOOP("Sentences", "drain")},
    {"drawing.service.electricity", QT_TRANSLATE_NOOP("Sentences", "electricity")},
    {"drawing.service.gas", QT_TRANSLATE_NOOP("Sentences", "gas")},
    {"drawing.service.oil", QT_TRANSLATE_NOOP("Sentences", "oil")},
    {"drawing.service.telecom", QT_TRANSLATE_NOOP("Sentences", "telecom")},
    {"drawing.service.waste", QT_TRANSLATE_NOOP("Sentences", "waste")},
    {"drawing.service.water", QT_TRANSLATE_NOOP("Sentences", "water")},
    {"drawing.tie", QT_TRANSLATE_NOOP("Sentences", "{length:bare}")},
    {"drawing.tie-check", QT_TRANSLATE_NOOP("Sentences", "check {length:bare}")},
    {"drawing.wall", QT_TRANSLATE_NOOP("Sentences", "{wall:cap}")},
    {"drawing.wall-length", QT_TRANSLATE_NOOP("Sentences", "{wall:cap} {length}")},
    {"paper.format",
     QT_TRANSLATE_NOOP("Sentences", "{path}: the name must end in .pdf, .svg or .png.")},
    {"paper.no-pages", QT_TRANSLATE_NOOP("Sentences", "{path}: there is no page to write.")},
    {"paper.write", QT_TRANSLATE_NOOP("Sentences", "{path} could not be written: {reason}")},
};

}  // namespace

std::span<const Sentence> paperSentences() { return kSentences; }

}  // namespace sumpwright::words
