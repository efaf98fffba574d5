#pragma once
// What the core has to say, without saying it in any language.
//
// A Message is a stable id and named, typed arguments. The sentences stand in one table in
// app/words, where units, decimals and language are applied. Ids are lower case, dotted by theme
// ("plan.opening.off-wall"), never reused for another meaning, and listed in the manual.

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "base/Quantities.h"

namespace sumpwright::base {

enum class Unit {
  none,
  metre,
  millimetre,
  squareMetre,
  degree,
  percent,
  pascal,
  cubicMetrePerHour,
  metrePerSecond,
  watt,
  kilowattHour
};

/// A number with its unit; `value` is in that unit (metres for Unit::metre, ...).
struct Quantity {
  double value = 0.0;
  Unit unit = Unit::none;
  bool operator==(const Quantity&) const = default;
};

struct Arg;

struct Message {
  std::string id;
  std::vector<Arg> args;  ///< in the order given; names are unique within one message

  // None of these in the class: Arg is not complete here, and some compilers want it.
  Message();
  explicit Message(std::string messageId);
  Message(std::string messageId, std::vector<Arg> arguments);
  /// The argument of that name, or nullptr.
  const Arg* find(const std::string& name) const;
  bool operator==(const Message& other) const;
};

/// A named argument: user text as typed, a count, a quantity, or a message to be put into words.
struct Arg {
  std::string name;
  std::variant<std::string, std::int64_t, Quantity, Message> value;
  bool operator==(const Arg&) const = default;
};

/// Shorthands.
Arg text(std::string name, std::string value);
Arg count(std::string name, std::int64_t value);
Arg metres(std::string name, double value);
Arg millimetres(std::string name, double value);
Arg degrees(std::string name, double value);
Arg number(std::string name, double value);
Arg percent(std::string name, double value);
Arg pressure(std::string name, Pressure value);
Arg flow(std::string name, Flow value);
Arg speed(std::string name, double metresPerSecond);
Arg watts(std::string name, double value);
Arg kilowattHours(std::string name, double value);
Arg phrase(std::string name, Message value);

/// A message that is just the user's own text, shown as it is: id "text", argument "text".
Message plainText(std::string value);

}  // namespace sumpwright::base
