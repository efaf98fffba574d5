#include "base/Message.h"

#include <algorithm>
#include <utility>

namespace sumpwright::base {

Message::Message() = default;

Message::Message(std::string messageId) : id(std::move(messageId)) {}

Message::Message(std::string messageId, std::vector<Arg> arguments)
    : id(std::move(messageId)), args(std::move(arguments)) {}

const Arg* Message::find(const std::string& name) const {
  const auto it =
      std::find_if(args.begin(), args.end(), [&](const Arg& a) { return a.name == name; });
  return it == args.end() ? nullptr : &*it;
}

bool Message::operator==(const Message& other) const {
  return id == other.id && args == other.args;
}

Arg text(std::string name, std::string value) { return {std::move(name), std::move(value)}; }
Arg count(std::string name, std::int64_t value) { return {std::move(name), value}; }
Arg metres(std::string name, double value) {
  return {std::move(name), Quantity{value, Unit::metre}};
}
Arg millimetres(std::string name, double value) {
  return {std::move(name), Quantity{value, Unit::millimetre}};
}
Arg degrees(std::string name, double value) {
  return {std::move(name), Quantity{value, Unit::degree}};
}
Arg number(std::string name, double value) {
  return {std::move(name), Quantity{value, Unit::none}};
}
Arg percent(std::string name, double value) {
  return {std::move(name), Quantity{value, Unit::percent}};
}
Arg pressure(std::string name, Pressure value) {
  return {std::move(name), Quantity{value.pa(), Unit::pascal}};
}
Arg flow(std::string name, Flow value) {
  return {std::move(name), Quantity{value.m3PerH(), Unit::cubicMetrePerHour}};
}
Arg speed(std::string name, double metresPerSecond) {
  return {std::move(name), Quantity{metresPerSecond, Unit::metrePerSecond}};
}
Arg watts(std::string name, double value) { return {std::move(name), Quantity{value, Unit::watt}}; }
Arg kilowattHours(std::string name, double value) {
  return {std::move(name), Quantity{value, Unit::kilowattHour}};
}
Arg phrase(std::string name, Message value) { return {std::move(name), std::move(value)}; }

Message plainText(std::string value) { return Message("text", {text("text", std::move(value))}); }

}  // namespace sumpwright::base
