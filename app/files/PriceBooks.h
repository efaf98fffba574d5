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

struct PriceBookEntry {
  std::string id;
  std::string title;
  bool invented = false;
};
/// As knownPriceBooks(), with what there is to choose by.
std::vector<PriceBookEntry> availablePriceBooks();

/// Writes a book of the user's to its path. Problems: its own, where it breaks the rules of a book,
/// file.not-writable; then the file is as it was. Contract: its path is not empty.
base::Problems savePriceBook(const LoadedPrices& loaded);

/// A new book in the user's own folder with the prices of another, under an id and a name of its
/// own; what is invented stays marked so, and an invented price of electricity is not taken along,
/// for papers show it to clients as the firm's. Problems: file.not-writable.
base::Result<LoadedPrices> ownPriceBook(const price::PriceBook& book);

/// Copies a book from elsewhere into the user's own folder; one that is there already like it is
/// taken as it is. Problems: those of priceBookFromFile(), file.prices-taken (another has its id),
/// file.not-writable.
base::Result<LoadedPrices> takePriceBook(const std::string& path);

/// The book in a file. Problems: file.* of the file, or file.prices-unusable and the book's own.
base::Result<LoadedPrices> priceBookFromFile(const std::string& path);

/// The book that the job's quote names; nothing where it names none, so that no invented price gets
/// into a paper unasked.
base::Result<std::optional<LoadedPrices>> priceBookOf(const plan::Job& job);

}  // namespace sumpwright::files
