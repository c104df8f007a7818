// A document tree onto pages of A4: title with code, headings, lists, tables whose head stands on every page, figures;
// banner, foot and page number on every page. Black only.

#pragma once

#include <functional>
#include <memory>

#include "core/report/document.h"

class QPainter;
class QPaintDevice;
class QTextDocument;

namespace cupule::ui {

class DocumentPaper {
public:
    /// Laid out for the resolution of `device`; paint onto that device only.
    DocumentPaper(const report::Document& document, QPaintDevice* device);
    ~DocumentPaper();
    [[nodiscard]] int pages() const;
    /// `page` from 0.
    void paint(QPainter& painter, int page) const;
    /// All pages, one after the other; `nextPage` is called between two.
    void paintAll(QPainter& painter, const std::function<void()>& nextPage) const;

private:
    report::Document m_document;
    std::unique_ptr<QTextDocument> m_text;
};

} // namespace cupule::ui
