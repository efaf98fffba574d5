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

/// A file of the user's folder for a book of that id; empty where there is one by that name.
std::string freshPricesPath(const std::string& id) {
  QString name;
  for (const QChar c : QString::fromStdString(id)) {
    const bool plain = c.isLetterOrNumber() || c == QLatin1Char('-') || c == QLatin1Char('_');
    name += plain ? c : QLatin1Char('_');
  }
  const QDir folder(QString::fromStdString(userPriceFolder()));
  folder.mkpath(QStringLiteral("."));  // where that fails, writing says why
  const QString path = folder.filePath(name + QStringLiteral(".json"));
  return QFileInfo::exists(path) ? std::string() : path.toStdString();
}

std::vector<std::string> idsOf(const std::vector<UserPrices>& own) {
  std::vector<std::string> ids;
  for (const resources::BuiltInFile& file : resources::builtInPriceBooks())
    ids.emplace_back(file.id);
  for (const UserPrices& user : own) {
    if (user.read.ok() && std::find(ids.begin(), ids.end(), user.read->book.id) == ids.end())
      ids.push_back(user.read->book.id);
  }
  return ids;
}

LoadedPrices builtInPrices(const resources::BuiltInFile& file) {
  base::Result<price::PriceBook> book = price::readPriceBook(file.text);
  SUMPWRIGHT_REQUIRE(book.ok());
  return {std::move(book).value(), ""};
}

base::Result<LoadedPrices> bookAmong(const std::vector<UserPrices>& own, const std::string& id) {
  std::vector<const UserPrices*> meant;
  for (const UserPrices& file : own) {
    if (file.isFor(id)) meant.push_back(&file);
  }
  if (meant.size() > 1) {
    return pricesProblem("file.prices-twice",
                         {base::text("book", id), base::text("file", meant[0]->path),
                          base::text("other", meant[1]->path)});
  }
  if (!meant.empty()) return meant.front()->read;
  for (const resources::BuiltInFile& file : resources::builtInPriceBooks()) {
    if (file.id == id) return builtInPrices(file);
  }
  std::string known;
  for (const std::string& one : idsOf(own)) known += (known.empty() ? "" : ", ") + one;
  return pricesProblem("file.prices-unknown", {base::text("book", id), base::text("known", known)});
}

}  // namespace

std::string userPriceFolder() {
  const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
  return (data + "/sumpwright/prices").toStdString();
}

std::vector<std::string> knownPriceBooks() { return idsOf(userPrices()); }

base::Result<LoadedPrices> priceBookById(const std::string& id) {
  return bookAmong(userPrices(), id);
}

std::vector<PriceBookEntry> availablePriceBooks() {
  const std::vector<UserPrices> own = userPrices();
  std::vector<PriceBookEntry> out;
  for (const std::string& id : idsOf(own)) {
    const auto found = bookAmong(own, id);
    if (found.ok()) out.push_back({id, found->book.title, found->book.invented});
  }
  return out;
}

base::Problems savePriceBook(const LoadedPrices& loaded) {
  SUMPWRIGHT_REQUIRE(!loaded.path.empty());
  const std::string text = price::priceBookText(loaded.book);
  const auto sound = price::readPriceBook(text);
  if (!sound.ok()) return sound.problems();
  const auto written = writeBytes(loaded.path, text);
  return written.ok() ? base::Problems() : written.problems();
}

base::Result<LoadedPrices> ownPriceBook(const price::PriceBook& book) {
  const std::vector<std::string> known = knownPriceBooks();
  LoadedPrices own{book, ""};
  for (int k = 1; own.path.empty(); ++k) {
    const std::string number = k == 1 ? "" : "-" + std::to_string(k);
    own.book.id = "our-prices" + number;
    own.book.title = k == 1 ? "Our prices" : "Our prices, " + std::to_string(k);
    const std::string path = freshPricesPath(own.book.id);
    if (std::find(known.begin(), known.end(), own.book.id) == known.end() && !path.empty())
      own.path = path;
  }
  own.book.note.clear();
  if (book.invented) own.book.per_kwh.reset();  // it would be read as the firm's own word
  const base::Problems problems = savePriceBook(own);
  if (!problems.empty()) return problems;
  return own;
}

base::Result<LoadedPrices> takePriceBook(const std::string& path) {
  auto read = priceBookFromFile(path);
  if (!read.ok()) return read.problems();
  LoadedPrices taken = std::move(read).value();
  const std::vector<std::string> known = knownPriceBooks();
  const auto there = std::find(known.begin(), known.end(), taken.book.id);
  std::string to = freshPricesPath(taken.book.id);
  if (there != known.end() || to.empty()) {
    const auto other = priceBookById(taken.book.id);
    const std::string text = price::priceBookText(taken.book);
    if (other.ok() && price::priceBookText(other->book) == text) return *other;
    return pricesProblem("file.prices-taken", {base::text("book", taken.book.id),
                                               base::text("file", other.ok() ? other->path : to)});
  }
  taken.path = to;
  const base::Problems problems = savePriceBook(taken);
  if (!problems.empty()) return problems;
  return taken;
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
