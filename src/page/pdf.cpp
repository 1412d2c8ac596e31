#include <cairo-pdf.h>
#include <fmt/chrono.h>
#include <fmt/format.h>

#define POINTERHOLDER_TRANSITION 4  // qpdf 11: std::shared_ptr only
#include <ctime>
#include <exception>
#include <set>
#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFWriter.hh>

#include "page/output.hpp"
#include "page/painter.hpp"

namespace evencount::page {
namespace {

/// "2026-03-01T12:00:00Z".
Result<std::string> utc_date(std::int64_t seconds) {
  constexpr std::int64_t year_10000 = 253'402'300'800;
  if (seconds < 0 || seconds >= year_10000)
    return Problem{ProblemCode::out_of_range, "creation date", fmt::format("{}", seconds),
                   "seconds from 1970 to the year 9999"};
  const std::time_t time = seconds;
  return fmt::format("{:%Y-%m-%dT%H:%M:%SZ}", fmt::gmtime(time));
}

void write_outline(cairo_surface_t* surface, const std::vector<OutlineEntry>& outline, std::size_t pages) {
  for (const OutlineEntry& entry : outline)
    if (entry.page < pages)
      cairo_pdf_surface_add_outline(surface, CAIRO_PDF_OUTLINE_ROOT, entry.title.c_str(),
                                    fmt::format("page={}", entry.page + 1).c_str(),
                                    CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

/// The regions of a page but for links to places that are nowhere, and what has no marks.
std::vector<drawing::Region> sound_regions(const drawing::Drawing& page, const std::set<std::string>& places) {
  std::vector<drawing::Region> regions;
  for (const drawing::Region& region : page.regions) {
    const bool leads_nowhere = region.part == drawing::Part::link && !places.contains(region.text);
    if (region.end_mark > region.first_mark && !leads_nowhere) regions.push_back(region);
  }
  return regions;
}

std::set<std::string> places_of(const std::vector<drawing::Drawing>& pages) {
  std::set<std::string> places;
  for (const drawing::Drawing& page : pages)
    for (const drawing::Region& region : page.regions)
      if (region.part == drawing::Part::place && region.end_mark > region.first_mark) places.insert(region.text);
  return places;
}

/// Gives the figures of the structure tree, in order, their descriptions, which cairo can't write.
class Describer {
 public:
  explicit Describer(const std::vector<std::string>& texts) : texts_(texts) {}

  void describe(QPDFObjectHandle element, int depth = 0) {
    constexpr int deepest = 32;
    if (depth > deepest || next_ == texts_.size()) return;
    if (element.isArray()) {
      for (int i = 0; i < element.getArrayNItems(); ++i) describe(element.getArrayItem(i), depth + 1);
    } else if (element.isDictionary()) {
      if (element.getKey("/S").isNameAndEquals("/Figure"))
        element.replaceKey("/Alt", QPDFObjectHandle::newUnicodeString(texts_[next_++]));
      if (element.hasKey("/K")) describe(element.getKey("/K"), depth + 1);
    }
  }

 private:
  const std::vector<std::string>& texts_;
  std::size_t next_ = 0;
};

/// What cairo can't write: the language, that the content is tagged, that a window should show the title, and no date at all, where it
/// writes the present one.
Result<std::string> completed(const std::string& pdf, const DocumentInfo& info,
                              const std::vector<std::string>& figures) {
  try {
    QPDF document;
    document.setSuppressWarnings(true);  // cairo names a stamp of a page's resources more than once, each time the same
    document.processMemoryFile("booklet", pdf.data(), pdf.size());
    if (!info.created_unix) document.getTrailer().getKey("/Info").removeKey("/CreationDate");
    QPDFObjectHandle root = document.getRoot();
    if (root.hasKey("/StructTreeRoot")) Describer(figures).describe(root.getKey("/StructTreeRoot").getKey("/K"));
    auto marked = QPDFObjectHandle::newDictionary();
    marked.replaceKey("/Marked", QPDFObjectHandle::newBool(root.hasKey("/StructTreeRoot")));
    root.replaceKey("/MarkInfo", marked);
    root.replaceKey("/Lang", QPDFObjectHandle::newUnicodeString(info.language));
    auto preferences = QPDFObjectHandle::newDictionary();
    preferences.replaceKey("/DisplayDocTitle", QPDFObjectHandle::newBool(true));
    root.replaceKey("/ViewerPreferences", preferences);
    QPDFWriter writer(document);
    writer.setOutputMemory();
    writer.setDeterministicID(true);
    writer.setObjectStreamMode(qpdf_o_generate);
    writer.write();
    const std::shared_ptr<Buffer> bytes = writer.getBufferSharedPointer();
    return std::string(reinterpret_cast<const char*>(bytes->getBuffer()), bytes->getSize());
  } catch (const std::exception& error) {
    return Problem{ProblemCode::system_failure, "PDF", error.what(), ""};
  }
}

}  // namespace

Result<std::string> to_pdf(const std::vector<drawing::Drawing>& pages, const DocumentInfo& info) {
  const auto date = utc_date(info.created_unix.value_or(0));
  if (!date) return date.problem();
  const auto typesetter = Typesetter::open();
  if (!typesetter) return typesetter.problem();
  std::string bytes;
  std::vector<std::string> figures;
  const auto places = places_of(pages);
  {
    const Surface surface(cairo_pdf_surface_create_for_stream(append_bytes, &bytes, 72, 72));
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, info.title.c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_AUTHOR, info.author.c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "Evencount");
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, date->c_str());
    const Canvas canvas(cairo_create(surface.get()));
    PagesPainter painter(canvas.get(), *typesetter);
    for (std::size_t i = 0; i < pages.size(); ++i) {
      cairo_pdf_surface_set_size(surface.get(), pages[i].width.mm() / mm_per_pt,
                                 pages[i].height.mm() / mm_per_pt);
      cairo_pdf_surface_set_page_label(surface.get(), fmt::format("{}", i + 1).c_str());
      const auto regions = sound_regions(pages[i], places);
      for (const drawing::Region& region : regions)
        if (region.part == drawing::Part::figure) figures.push_back(region.text);
      if (auto done = painter.paint(pages[i], regions); !done) return done.problem();
      cairo_show_page(canvas.get());
    }
    write_outline(surface.get(), info.outline, pages.size());
    cairo_surface_finish(surface.get());
    if (const auto status = cairo_surface_status(surface.get()); status != CAIRO_STATUS_SUCCESS)
      return Problem{ProblemCode::system_failure, "PDF", cairo_status_to_string(status), ""};
  }
  return completed(bytes, info, figures);
}

}  // namespace evencount::page
