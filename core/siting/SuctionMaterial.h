#pragma once
// Permeability as a contractor reads it: what lets air through like that. Internal to core/siting.

#include <string>

#include "base/Message.h"

namespace sumpwright::siting {

/// Phrase "suction.material.*": one material, or from one to another. Clean stone from 2e-8 m2 and
/// hardcore with fines from 1e-10 m2 (own figures, between the ranges of suction::rangesOf()), sand
/// from 1e-12 m2, silt or clay under it (Nazaroff and Nero 1988, from memory).
base::Message materialOf(double low_m2, double high_m2);

/// "6 x 10^-10" with the signs of print: one figure before the power.
std::string inPowersOfTen(double value);

}  // namespace sumpwright::siting
