#include <algorithm>
#include <nlohmann/json.hpp>

#include "plan/JobTree.h"

namespace sumpwright::plan {

namespace {

constexpr std::size_t kLine = 100;  ///< columns
constexpr std::size_t kIndent = 2;

/// Text that needs no escape, as most does.
bool isPlain(const std::string& text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return c >= ' ' && c <= '~' && c != '"' && c != '\\'; });
}

std::string dumped(const Json& scalar) {
  return scalar.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// Text in quotes.
std::string quoted(const std::string& text) {
  return isPlain(text) ? "\"" + text + "\"" : dumped(Json(text));
}

std::string plain(const Json& scalar) {
  return scalar.is_string() ? quoted(scalar.get_ref<const std::string&>()) : dumped(scalar);
}

std::string keyText(const std::string& key) { return quoted(key) + ": "; }

std::string onOneLine(const Json& json) {
  if (!json.is_structured() || json.empty()) return plain(json);
  const bool object = json.is_object();
  std::string line;
  for (auto it = json.begin(); it != json.end(); ++it) {
    line += line.empty() ? "" : ", ";
    if (object) line += keyText(it.key());
    line += onOneLine(*it);
  }
  return object ? "{" + line + "}" : "[" + line + "]";
}

/// Containers that might fit on a line; others are not even tried.
bool mayFit(const Json& json) {
  constexpr std::size_t kMost = 24;
  if (!json.is_structured()) return true;
  if (json.size() > kMost) return false;
  for (const Json& child : json) {
    if (child.is_structured() && (child.size() > 3 || !mayFit(child))) return false;
  }
  return true;
}

void write(const Json& json, std::size_t indent, std::size_t before, std::string& out);

void writeChildren(const Json& json, std::size_t indent, std::string& out) {
  const bool object = json.is_object();
  out += object ? "{" : "[";
  const char* separator = "\n";
  for (auto it = json.begin(); it != json.end(); ++it) {
    out += separator;
    out.append(indent + kIndent, ' ');
    const std::string key = object ? keyText(it.key()) : std::string();
    out += key;
    write(*it, indent + kIndent, indent + kIndent + key.size(), out);
    separator = ",\n";
  }
  out += "\n";
  out.append(indent, ' ');
  out += object ? "}" : "]";
}

void write(const Json& json, std::size_t indent, std::size_t before, std::string& out) {
  if (mayFit(json)) {
    const std::string line = onOneLine(json);
    if (!json.is_structured() || json.empty() || before + line.size() < kLine) {
      out += line;
      return;
    }
  }
  writeChildren(json, indent, out);
}

}  // namespace

std::string layOut(const Json& json) {
  std::string out;
  write(json, 0, 0, out);
  out += "\n";
  return out;
}

}  // namespace sumpwright::plan
