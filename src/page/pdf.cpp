#include <cairo-pdf.h>
#include <fmt/chrono.h>
#include <fmt/format.h>

#define POINTERHOLDER_TRANSITION 4  // qpdf 11: std::shared_ptr only
#include <ctime>
#include <exception>
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

/// What cairo can't write: the language, that a window should show the title, and no date at all, where it
/// writes the present one.
Result<std::string> completed(const std::string& pdf, const DocumentInfo& info) {
  try {
    QPDF document;
    document.processMemoryFile("booklet", pdf.data(), pdf.size());
    if (!info.created_unix) document.getTrailer().getKey("/Info").removeKey("/CreationDate");
    QPDFObjectHandle root = document.getRoot();
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
  {
    const Surface surface(cairo_pdf_surface_create_for_stream(append_bytes, &bytes, 72, 72));
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, info.title.c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_AUTHOR, info.author.c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "Evencount");
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, date->c_str());
    const Canvas canvas(cairo_create(surface.get()));
    for (std::size_t i = 0; i < pages.size(); ++i) {
      cairo_pdf_surface_set_size(surface.get(), pages[i].width.mm() / mm_per_pt,
                                 pages[i].height.mm() / mm_per_pt);
      cairo_pdf_surface_set_page_label(surface.get(), fmt::format("{}", i + 1).c_str());
      if (auto done = paint(canvas.get(), pages[i], *typesetter); !done) return done.problem();
      cairo_show_page(canvas.get());
    }
    write_outline(surface.get(), info.outline, pages.size());
    cairo_surface_finish(surface.get());
    if (const auto status = cairo_surface_status(surface.get()); status != CAIRO_STATUS_SUCCESS)
      return Problem{ProblemCode::system_failure, "PDF", cairo_status_to_string(status), ""};
  }
  return completed(bytes, info);
}

}  // namespace evencount::page
