#pragma once
// What can be said of a house, a wall or a thing, as tables: which value, what it is called, how it
// is asked for. FactForm shows them; tests walk them to see that all of a job can be set.

#include <QString>
#include <QStringList>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::stages {

/// monostate: not known. Lengths, levels and bearings in metres and degrees, pressures in pascals,
/// flows in m³/h; a choice is its number in the list.
using FactValue = std::variant<std::monostate, double, int, std::string>;

/// A small size as typed, in millimetres: a bare 127 is meant so, since no core or pipe is 10 m
/// wide (own figure).
inline double sizeTyped_mm(double metres) { return metres >= 10.0 ? metres : 1000.0 * metres; }

enum class FactKind {
  text,
  note,      ///< text of several lines
  length,    ///< measured forward
  level,     ///< may be under 0
  bearing,   ///< degrees
  pressure,  ///< its unit stands with the label
  flow,      ///< the same
  number,    ///< any other figure; its label names the unit
  whole,     ///< a year, a storey
  choice,
  list,  ///< as text of tools/ListText.h
};

struct Fact {
  std::string key;  ///< where its owner holds it, as in the job file: "standby/where"
  QString label;
  QString says;  ///< the full name, for the tip and a screen reader
  FactKind kind = FactKind::text;
  QStringList choices;
  QString unknown;        ///< what is taken while it is not known; %1: `taken` with its unit
  double taken = 0.0;     ///< of a pressure
  QString example;        ///< how a list is typed
  bool required = false;  ///< empty is no answer
  std::function<FactValue(const plan::Job&)> get;
  std::function<base::Result<plan::Job>(const plan::Job&, const FactValue&)> set;
  std::function<bool(const plan::Job&)> applies;  ///< none: always
};

/// A table of facts of one owner: how it is got from a job and put back, then its parts. A part is
/// a member pointer, or anything that gives a reference to the part when called with the owner.
template <class Owner>
class FactTable {
 public:
  using Get = std::function<std::optional<Owner>(const plan::Job&)>;
  using Put = std::function<base::Result<plan::Job>(const plan::Job&, const Owner&)>;
  using Read = std::function<FactValue(const Owner&)>;
  using Write = std::function<void(Owner&, const FactValue&)>;

  FactTable(Get get, Put put) : m_get(std::move(get)), m_put(std::move(put)) {}

  template <class Part>
  Fact& text(std::string key, const QString& label, Part part, FactKind kind = FactKind::text) {
    return add(
        std::move(key), label, kind,
        [part](const Owner& o) -> FactValue {
          const std::string& text = std::invoke(part, o);
          return text.empty() ? FactValue() : FactValue(text);
        },
        [part](Owner& o, const FactValue& v) {
          const auto* text = std::get_if<std::string>(&v);
          std::invoke(part, o) = text == nullptr ? std::string() : *text;
        });
  }

  /// An optional<double>; a plain double is one that is always known.
  template <class Part>
  Fact& measure(std::string key, const QString& label, Part part,
                FactKind kind = FactKind::length) {
    using Held = std::remove_cvref_t<std::invoke_result_t<Part, Owner&>>;
    Fact& fact = add(
        std::move(key), label, kind,
        [part](const Owner& o) -> FactValue {
          const std::optional<double> value = std::invoke(part, o);
          return value ? FactValue(*value) : FactValue();
        },
        [part](Owner& o, const FactValue& v) {
          if (const double* value = std::get_if<double>(&v)) {
            std::invoke(part, o) = *value;
          } else if constexpr (!std::is_same_v<Held, double>) {
            std::invoke(part, o).reset();
          }
        });
    fact.required = std::is_same_v<Held, double>;
    return fact;
  }

  /// An optional<int>, or an int that is always known.
  template <class Part>
  Fact& whole(std::string key, const QString& label, Part part) {
    using Held = std::remove_cvref_t<std::invoke_result_t<Part, Owner&>>;
    Fact& fact = add(
        std::move(key), label, FactKind::whole,
        [part](const Owner& o) -> FactValue {
          const std::optional<int> value = std::invoke(part, o);
          return value ? FactValue(*value) : FactValue();
        },
        [part](Owner& o, const FactValue& v) {
          if (const int* value = std::get_if<int>(&v)) {
            std::invoke(part, o) = *value;
          } else if constexpr (!std::is_same_v<Held, int>) {
            std::invoke(part, o).reset();
          }
        });
    fact.required = std::is_same_v<Held, int>;
    return fact;
  }

  /// A closed list or a yes and no, in the order of `names`.
  template <class Part>
  Fact& choice(std::string key, const QString& label, Part part, const QStringList& names) {
    using Held = std::remove_cvref_t<std::invoke_result_t<Part, Owner&>>;
    Fact& fact = add(
        std::move(key), label, FactKind::choice,
        [part](const Owner& o) -> FactValue { return static_cast<int>(std::invoke(part, o)); },
        [part](Owner& o, const FactValue& v) {
          if (const int* chosen = std::get_if<int>(&v)) {
            std::invoke(part, o) = static_cast<Held>(*chosen);
          }
        });
    fact.choices = names;
    return fact;
  }

  Fact& add(std::string key, const QString& label, FactKind kind, Read read, Write write) {
    Fact fact;
    fact.key = std::move(key);
    fact.label = label;
    fact.says = label;
    fact.kind = kind;
    fact.get = [get = m_get, read](const plan::Job& job) {
      const auto owner = get(job);
      return owner ? read(*owner) : FactValue();
    };
    fact.set = [get = m_get, put = m_put, write](const plan::Job& job, const FactValue& value) {
      auto owner = get(job);
      if (!owner) return base::Result<plan::Job>(job);
      write(*owner, value);
      return put(job, *owner);
    };
    m_facts.push_back(std::move(fact));
    return m_facts.back();
  }
  /// One that is not put back with its owner.
  Fact& add(Fact fact) {
    m_facts.push_back(std::move(fact));
    return m_facts.back();
  }

  std::vector<Fact> take() { return std::move(m_facts); }

 private:
  Get m_get;
  Put m_put;
  std::vector<Fact> m_facts;
};

}  // namespace sumpwright::stages
