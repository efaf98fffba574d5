#pragma once
// Changes of a job's quote, line by line, as values: the quote before and after. A change that says
// nothing any more is taken out, so that the line is the design's again. Ids of new lines are given
// by plan::setQuote().

#include "price/Quote.h"

namespace sumpwright::price {

enum class LinePart { text, quantity, unit_price };

/// One part of a line as the job has it; "": the design's or the book's again. Whether the line is
/// in the total stays as it was.
plan::Quote withPart(plan::Quote quote, const PricedLine& line, LinePart part,
                     const std::string& text);
/// What a job's quote says of that part; "": nothing.
std::string partOf(const plan::Quote& quote, const PricedLine& line, LinePart part);
/// In the quote or not: an offered line is taken up or offered again, another left out or put back.
plan::Quote withTick(plan::Quote quote, const PricedLine& line, bool in);
/// The line as the design gives it, or without the one the job has added.
plan::Quote withoutChange(plan::Quote quote, const PricedLine& line);
/// A line of the job's own is counted by this unit; another has it from the book and stays.
plan::Quote withUnit(plan::Quote quote, const PricedLine& line, PriceUnit unit);
/// With a line of the job's own, or one of the book's items; of neither: as it was. Work of the
/// job's own begins by the hour.
plan::Quote withNewLine(plan::Quote quote, const std::string& item, const std::string& text,
                        plan::QuoteKind kind = plan::QuoteKind::material);

}  // namespace sumpwright::price
