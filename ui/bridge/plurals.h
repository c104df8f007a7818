// English for one: the sources of tr("%n visits") are plurals, and without a translation Qt would say "1 visits".

#pragma once

#include <QTranslator>

namespace cupule::ui {

class EnglishPlurals : public QTranslator {
    Q_OBJECT
public:
    using QTranslator::QTranslator;
    [[nodiscard]] bool isEmpty() const override { return false; }
    /// The singular where `n` is 1 and the source is one of the plurals; otherwise null, which means the source.
    [[nodiscard]] QString translate(const char* context, const char* source, const char* disambiguation, int n) const override;
    /// Whether the source needs no singular or has one.
    [[nodiscard]] static bool knows(const QString& source);
};

} // namespace cupule::ui
