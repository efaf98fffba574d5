#include "files/PriceBooks.h"

#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>
#include <QString>
#include <algorithm>
#include <utility>

#include "files/JobFile.h"
#include "resources/BuiltIn.h"

namespace sumpwright::files {

namespace {

base::Problem pricesProblem(const char* id, std::vector<base::Arg> args) {
  return {base::Message(id, std::move(args)), "", base::Gravity::unreadable};
}

/// One file of the user's folder: its book or what is wrong with it.
struct UserPrices {
  std::string path;
  std::string stem;
  base::Result<LoadedPrices> read;
  bool isFor(const std::string& id) const { return read.ok() ? read->book.id == id : stem == id; }
};

std::vector<UserPrices> userPrices() {
  std::vector<UserPrices> out;
  const QDir folder(QString::fromStdString(userPriceFolder()));
  for (const QFileInfo& info : folder.entryInfoList({"*.json"}, QDir::Files, QDir::Name)) {
    const std::string path = info.filePath().toStdString();
    out.push_back({path, info.completeBaseName().toStdString(), priceBookFromFile(path)});
  }
  return out;
}

LoadedPrices builtInPrices(const resources::BuiltInFile& file) {
  base::Result<price::PriceBook> book = price::readPriceBook(file.text);
  SUMPWRIGHT_REQUIRE(book.ok());
  return {std::move(book).value(), ""};
}

}  // namespace

std::string userPriceFolder() {
  const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
  return (data + "/sumpwright/prices").toStdString();
}

std::vector<std::string> knownPriceBooks() {
  std::vector<std::string> ids;
  for (const resources::BuiltInFile& file : resources::builtInPriceBooks())
    ids.emplace_back(file.id);
  for (const UserPrices& user : userPrices()) {
    if (user.read.ok() && std::find(ids.begin(), ids.end(), user.read->book.id) == ids.end())
      ids.push_back(user.read->book.id);
  }
  return ids;
}

base::Result<LoadedPrices> priceBookById(const std::string& id) {
  std::vector<UserPrices> own = userPrices();
  std::erase_if(own, [&](const UserPrices& file) { return !file.isFor(id); });
  if (own.size() > 1) {
    return pricesProblem("file.prices-twice",
                         {base::text("book", id), base::text("file", own[0].path),
                          base::text("other", own[1].path)});
  }
  if (!own.empty()) return own.front().read;
  for (const resources::BuiltInFile& file : resources::builtInPriceBooks()) {
    if (file.id == id) return builtInPrices(file);
  }
  std::string known;
  for (const std::string& one : knownPriceBooks()) known += (known.empty() ? "" : ", ") + one;
  return pricesProblem("file.prices-unknown", {base::text("book", id), base::text("known", known)});
}

base::Result<LoadedPrices> priceBookFor(const std::string& named) {
  return priceBookById(named.empty() ? kPricesUnchosen : named);
}

base::Result<LoadedPrices> priceBookFromFile(const std::string& path) {
  base::Result<std::string> text = readBytes(path, price::kMostPriceBytes);
  if (!text.ok()) return text.problems();
  base::Result<price::PriceBook> book = price::readPriceBook(text.value());
  if (book.ok()) return LoadedPrices{std::move(book).value(), path};
  base::Problems problems{pricesProblem("file.prices-unusable", {base::text("file", path)})};
  const base::Problems own = book.problems();
  problems.insert(problems.end(), own.begin(), own.end());
  return problems;
}

base::Result<std::optional<LoadedPrices>> priceBookOf(const plan::Job& job) {
  const std::string& id = job.design.quote.price_book;
  if (id.empty()) return std::optional<LoadedPrices>();
  base::Result<LoadedPrices> book = priceBookById(id);
  if (!book.ok()) return book.problems();
  return std::optional<LoadedPrices>(std::move(book).value());
}

}  // namespace sumpwright::files
