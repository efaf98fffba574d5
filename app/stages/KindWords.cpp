#include "stages/KindWords.h"

#include <QCoreApplication>

namespace sumpwright::stages {

namespace {

struct KindWords {
  Q_DECLARE_TR_FUNCTIONS(KindWords)
};

using K = KindWords;

QString notKnown() { return K::tr("Not known"); }

}  // namespace

QStringList openingKindWords() {
  return {K::tr("Window"), K::tr("Door"),          K::tr("Glazed door"), K::tr("Garage door"),
          K::tr("Vent"),   K::tr("Flue terminal"), K::tr("Soffit vent"), K::tr("Roof window")};
}
QStringList opensWords() {
  return {K::tr("Opens"), K::tr("Fixed pane"), K::tr("Always open"), K::tr("Air intake")};
}
QStringList measuredWords() { return {K::tr("Outside"), K::tr("Inside")}; }
QStringList serviceKindWords() {
  return {K::tr("Gas"),   K::tr("Electricity"), K::tr("Telecom"), K::tr("Oil"),
          K::tr("Water"), K::tr("Drain"),       K::tr("Waste")};
}
QStringList runWords() {
  return {notKnown(), K::tr("Known, as drawn"), K::tr("Overhead: none buried")};
}
QStringList drainKindWords() {
  return {notKnown(), K::tr("Foul water"), K::tr("Surface water"), K::tr("Land drain")};
}
QStringList yesNoWords() { return {notKnown(), K::tr("No"), K::tr("Yes")}; }
QStringList noYesWords() { return {K::tr("No"), K::tr("Yes")}; }
QStringList roomUseWords() {
  return {K::tr("Room"),        K::tr("Living room"), K::tr("Bedroom"), K::tr("Kitchen"),
          K::tr("Dining room"), K::tr("Hall"),        K::tr("Stairs"),  K::tr("Bathroom"),
          K::tr("Shower"),      K::tr("WC"),          K::tr("Utility"), K::tr("Store"),
          K::tr("Garage"),      K::tr("Office")};
}
QStringList floorKindWords() {
  return {K::tr("Floor not known"), K::tr("Ground-bearing slab"), K::tr("Suspended concrete"),
          K::tr("Suspended timber")};
}
QStringList housePartWords() {
  return {K::tr("House"), K::tr("Extension"), K::tr("Conservatory"), K::tr("Porch"),
          K::tr("Garage")};
}
QStringList oversiteWords() { return {notKnown(), K::tr("Sealed"), K::tr("Open ground")}; }
QStringList belowFloorWords() {
  return {K::tr("Not known what carries it"), K::tr("On its own footing"), K::tr("On the slab")};
}
QStringList supplyKindWords() {
  return {K::tr("Socket"), K::tr("Fused spur"), K::tr("Consumer unit")};
}
QStringList fittingKindWords() {
  return {K::tr("Sink"), K::tr("Bath"),  K::tr("Shower"),
          K::tr("WC"),   K::tr("Basin"), K::tr("Appliance with water")};
}
QStringList outsideKindWords() {
  return {K::tr("Path"),
          K::tr("Gully"),
          K::tr("Inspection chamber"),
          K::tr("Tank"),
          K::tr("Air conditioner"),
          K::tr("Deck"),
          K::tr("Neighbour's opening"),
          K::tr("Boundary"),
          K::tr("Soakaway"),
          K::tr("Septic tank"),
          K::tr("Overhead line"),
          K::tr("Sitting place"),
          K::tr("Steps"),
          K::tr("Carport")};
}
QStringList featureKindWords() {
  return {K::tr("Pier"),           K::tr("Chimney breast"), K::tr("Beam bearing"),
          K::tr("Movement joint"), K::tr("Weep hole"),      K::tr("Stepped footing")};
}
QStringList wallKindWords() {
  return {K::tr("Outside wall"), K::tr("Party wall"), K::tr("Dwarf wall")};
}
QStringList partyBelowWords() {
  return {notKnown(), K::tr("Cut off at the wall"), K::tr("Goes on next door")};
}
QStringList elevationWords() {
  return {K::tr("Not marked"), K::tr("Front, to the street"), K::tr("Rear"), K::tr("Gable")};
}
QStringList foundationWords() {
  return {notKnown(),
          K::tr("Strip footing"),
          K::tr("Rubble"),
          K::tr("Edge of a raft"),
          K::tr("Ground beam"),
          K::tr("Insulated raft"),
          K::tr("Retaining wall")};
}
QStringList groundOwnerWords() {
  return {notKnown(), K::tr("Own ground"), K::tr("Shared ground"), K::tr("Neighbour's ground"),
          K::tr("Public ground")};
}
QStringList surveyMethodWords() {
  return {K::tr("Not said"), K::tr("Tape"), K::tr("Laser"), K::tr("Traced picture"),
          K::tr("Outline from a map")};
}
QStringList unitWords() { return {K::tr("Metres"), K::tr("Feet and inches")}; }
QStringList buildTypeWords() {
  return {notKnown(),
          K::tr("Cavity masonry"),
          K::tr("Solid masonry"),
          K::tr("Timber frame"),
          K::tr("Stone, rubble"),
          K::tr("Other")};
}
QStringList fillWords() {
  return {notKnown(), K::tr("Clean stone"), K::tr("Hardcore with fines"), K::tr("No hardcore")};
}
QStringList barrierWords() {
  return {notKnown(), K::tr("None"), K::tr("In the floor only"), K::tr("Lapped through the wall")};
}
QStringList standbyStateWords() {
  return {K::tr("Not searched for"), K::tr("Searched, none found"), K::tr("Found")};
}
QStringList standbyIdentityWords() {
  return {K::tr("Taken for one"), K::tr("Has a label"), K::tr("Traced to a sump")};
}
QStringList lookedWords() { return {K::tr("Not looked"), K::tr("There"), K::tr("None")}; }
QStringList endWords() { return {K::tr("Start"), K::tr("End"), K::tr("Middle")}; }
QStringList outletWords() { return {K::tr("Low at the hole"), K::tr("Riser to the eaves")}; }
QStringList fanPlaceWords() {
  return {K::tr("Outside, low"), K::tr("Outside, high"), K::tr("In the roof space")};
}
QStringList sealWords() { return {notKnown(), K::tr("Sealed"), K::tr("Not sealed")}; }
QStringList sumpKindWords() {
  return {K::tr("Cored through a wall"), K::tr("Dug inside"), K::tr("Standby sump")};
}

}  // namespace sumpwright::stages
