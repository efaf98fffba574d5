#pragma once
// The closed lists of plan/Kinds.h in words, each in the order of its enum.

#include <QStringList>

namespace sumpwright::stages {

QStringList openingKindWords();
QStringList opensWords();
QStringList measuredWords();
QStringList serviceKindWords();
QStringList runWords();
QStringList drainKindWords();
QStringList yesNoWords();  ///< not known, no, yes
QStringList noYesWords();  ///< of what is no or yes
QStringList roomUseWords();
QStringList floorKindWords();
QStringList housePartWords();
QStringList oversiteWords();
QStringList belowFloorWords();
QStringList supplyKindWords();
QStringList fittingKindWords();
QStringList outsideKindWords();
QStringList featureKindWords();
QStringList wallKindWords();
QStringList partyBelowWords();
QStringList elevationWords();
QStringList foundationWords();
QStringList groundOwnerWords();
QStringList surveyMethodWords();
QStringList unitWords();
QStringList buildTypeWords();
QStringList fillWords();
QStringList barrierWords();
QStringList standbyStateWords();
QStringList standbyIdentityWords();
QStringList lookedWords();
QStringList endWords();
QStringList outletWords();
QStringList sumpKindWords();
QStringList fanPlaceWords();
QStringList sealWords();  ///< of a pipe in its hole

}  // namespace sumpwright::stages
