#pragma once
// Fans as data: a table of a firm's fans, or the invented classes that come with the program.
// Text form: JSON, described by resources/schema/fans.schema.json.

#include <string>
#include <string_view>
#include <vector>

#include "airflow/FanCurve.h"
#include "base/Result.h"
#include "base/Source.h"

namespace sumpwright::airflow {

struct Fan {
  std::string id;     ///< unique in its table
  std::string title;  ///< for lists and papers
  std::string note;
  base::Source source;  ///< of the curve: data sheet and date, own measurement, ...
  FanCurve curve;
};

struct FanTable {
  std::string id;
  std::string title;
  std::string note;
  bool invented = false;  ///< no product; said wherever one of its fans is shown
  std::vector<Fan> fans;  ///< in the order of the file, at least one

  const Fan* find(std::string_view fanId) const;
};

inline constexpr std::size_t kMostFanBytes = 1024U * 1024U;
inline constexpr std::size_t kMostFans = 500;

/// Reads a table. Problems (all "unreadable", ids "fans.*", with pointers): too large, not JSON,
/// not a fan table, newer version, wrong type, missing or unknown key, unknown mark, missing
/// source, repeated or empty id, neither or both of points and law, and those of FanCurve.
base::Result<FanTable> readFanTable(std::string_view text);

}  // namespace sumpwright::airflow
