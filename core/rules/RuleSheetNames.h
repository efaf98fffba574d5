#pragma once
// Text forms of the closed lists in RuleSheet.h: the enumerators' own names, but for Part::void_,
// which is written "void". Used with plan::nameOf and plan::valueOf.

#include "plan/KindNames.h"
#include "rules/RuleSheet.h"

namespace sumpwright::plan {

template <>
std::span<const std::string_view> namesOf<rules::Mark>();
template <>
std::span<const std::string_view> namesOf<rules::Severity>();
template <>
std::span<const std::string_view> namesOf<rules::Part>();
template <>
std::span<const std::string_view> namesOf<rules::RuleKind>();
template <>
std::span<const std::string_view> namesOf<rules::ThingKind>();
template <>
std::span<const std::string_view> namesOf<rules::WallAttribute>();
template <>
std::span<const std::string_view> namesOf<rules::DischargeMeasure>();
template <>
std::span<const std::string_view> namesOf<rules::PathKind>();
template <>
std::span<const std::string_view> namesOf<rules::MeasuredFrom>();
template <>
std::span<const std::string_view> namesOf<rules::PartKind>();

}  // namespace sumpwright::plan
