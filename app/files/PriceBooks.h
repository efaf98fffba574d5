#pragma once
// Where price books are found: the firm's own, *.json in sumpwright/prices of the XDG data folder
// (as a rule ~/.local/share/sumpwright/prices), then the built-in demo book. The same id in the
// user's folder takes a built-in one's place. An id found nowhere is a problem, never another book;
// a book of the user's that would have been the answer but cannot be read is a problem too.

#include <optional>
#include <string>
#include <vector>

#include "base/Result.h"
#include "plan/Job.h"
#include "price/PriceBook.h"

namespace sumpwright::files {

struct LoadedPrices {
  price::PriceBook book;
  std::string path;  ///< of a user's book; empty: built in
};

/// Taken where neither job nor command names a book: invented, and says so.
inline constexpr const char* kPricesUnchosen = "demo-prices";

/// The user's own folder; it need not exist.
std::string userPriceFolder();

/// Ids there are: built in, then the user's by file name. Books that cannot be read are not listed.
std::vector<std::string> knownPriceBooks();

/// Problems: file.prices-unknown, file.prices-twice, or file.prices-unusable followed by its own.
base::Result<LoadedPrices> priceBookById(const std::string& id);

/// The book a job names; kPricesUnchosen where it names none.
base::Result<LoadedPrices> priceBookFor(const std::string& named);

/// The book in a file. Problems: file.* of the file, or file.prices-unusable and the book's own.
base::Result<LoadedPrices> priceBookFromFile(const std::string& path);

/// The book that the job's quote names; nothing where it names none, so that no invented price gets
/// into a paper unasked.
base::Result<std::optional<LoadedPrices>> priceBookOf(const plan::Job& job);

}  // namespace sumpwright::files
