#include "siting/SuctionSecond.h"

#include <utility>

#include "suction/Everywhere.h"

namespace sumpwright::siting {

namespace {

constexpr double kHelps = 0.05;  // share of floor that a second sump adds at least (own figure)

std::optional<suction::Pair> partner(const SecondAsk& ask) {
  suction::EverywhereOptions options;
  const suction::Sink& first = ask.answer.sumps.front().sink;
  options.radius_m = ask.radius_m;
  options.step_m = options.solve_step_m;  // only solved places are asked for
  options.inertia = ask.inertia;
  options.target = ask.answer.target;
  options.fan = ask.fan;
  options.together = ask.together;
  const auto all = suction::everywhereOf(ask.solver, ask.study.perimeter(), options);
  for (const bool proven : {true, false}) {
    const suction::Allowed allowed = [&](const Place& place) {
      const State state = ask.study.stateAt(place);
      if (proven) return state == State::clear || state == State::advised_against;
      return state != State::refused;
    };
    if (auto pair = suction::bestPair(ask.solver, all, options, allowed, first)) return pair;
  }
  return std::nullopt;
}

base::Message sentenceOf(const SecondAsk& ask, const SecondSump& second) {
  const auto& perimeter = ask.study.perimeter();
  const char* helps = ask.together ? "suction.second.helps-shared" : "suction.second.helps";
  return base::Message(second.helps ? helps : "suction.second.hardly",
                       {base::phrase("wall", perimeter.wallLabel(perimeter.edgeAt(second.place))),
                        base::metres("chainage", second.place.chainage_m),
                        base::text("corner", perimeter.cornerLetter(second.place.ring, 0)),
                        base::phrase("state", base::Message(second.state == State::not_proven
                                                                ? "suction.second.not-proven"
                                                                : "suction.second.allowed")),
                        base::percent("before", 100.0 * ask.answer.mean_floor),
                        base::percent("after", 100.0 * second.mean_floor),
                        base::percent("whole_before", 100.0 * ask.answer.whole_floor),
                        base::percent("whole_after", 100.0 * second.whole_floor)});
}

}  // namespace

std::optional<SecondSump> secondSump(const SecondAsk& ask) {
  auto pair = partner(ask);
  if (!pair) return std::nullopt;
  const auto chance = ask.chance.ask({ask.answer.sumps.front().sink, pair->second.sink});
  if (!chance) return std::nullopt;
  SecondSump second;
  second.place = pair->second.place;
  second.point = ask.study.perimeter().pointAt(second.place);
  second.state = ask.study.stateAt(second.place);
  second.reach = pair->reach;
  second.whole_floor = chance->whole_floor;
  second.mean_floor = chance->mean_floor;
  second.helps = second.mean_floor - ask.answer.mean_floor >= kHelps;
  second.sentence = sentenceOf(ask, second);
  return second;
}

}  // namespace sumpwright::siting
