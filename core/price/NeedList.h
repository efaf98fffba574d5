#pragma once
// The list that a design's needs are put on. Internal to core/price.

#include <algorithm>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

#include "price/Materials.h"

namespace sumpwright::price {

class NeedList {
 public:
  void count(const char* item, NeedKind kind, int quantity) {
    if (quantity > 0) add(item, kind, Decimal::of(quantity), PriceUnit::each);
  }
  void metres(const char* item, double length_m, NeedKind kind = NeedKind::material) {
    if (reckons(length_m)) add(item, kind, Decimal::upToTenth(length_m), PriceUnit::metre);
  }
  void hours(const char* item, double time_h) {
    if (reckons(time_h)) add(item, NeedKind::labour, Decimal::upToTenth(time_h), PriceUnit::hour);
  }
  /// An optional item that is a thing to buy.
  void bought(std::string_view item) {
    for (Need& need : m_out.rows) need.goods = need.goods || need.item == item;
  }
  /// Says more of those items that are needed.
  void detail(std::initializer_list<std::string_view> items, const base::Message& message) {
    for (Need& need : m_out.rows) {
      if (std::find(items.begin(), items.end(), need.item) != items.end()) need.detail = message;
    }
  }
  void assumed(std::initializer_list<std::string_view> items) {
    for (Need& need : m_out.rows) {
      need.assumed |= std::find(items.begin(), items.end(), need.item) != items.end();
    }
  }
  void remark(base::Message message) { m_out.remarks.push_back(std::move(message)); }
  Needs take() {
    std::stable_sort(m_out.rows.begin(), m_out.rows.end(),
                     [](const Need& a, const Need& b) { return a.kind < b.kind; });
    return std::move(m_out);
  }

 private:
  /// Nothing of nothing; and more than can be reckoned with is told rather than guessed.
  bool reckons(double measure) {
    constexpr double kMostMeasure = 1e6;  // Decimal::upToTenth()
    if (measure > kMostMeasure) m_out.too_large = true;
    return measure > 0.0 && measure <= kMostMeasure;
  }
  void add(const char* item, NeedKind kind, Decimal quantity, PriceUnit unit) {
    Need need;
    need.item = item;
    need.kind = kind;
    need.text = base::Message(std::string("price.item.") + item);
    need.quantity = quantity;
    need.unit = unit;
    m_out.rows.push_back(std::move(need));
  }
  Needs m_out;
};

/// Wiring.cpp: what feeds so many fans. Cable, sleeves and conduit by the route of each; a fan
/// without one is told.
void addWiring(const siting::Study& study, const siting::SuctionSystem& system, int fans,
               NeedList& list);

}  // namespace sumpwright::price
