// What a label remembers of its size is what it would measure.

#include "ui/widgets/rich_label.h"

#include <QLabel>

#include "tests/gui/gui_support.h"

namespace cupule::ui {

namespace {

QString words(int count)
{
    QString html = QStringLiteral("<b>Worth B</b><br>");
    for (int i = 0; i < count; ++i)
        html += QStringLiteral("crown looked at from all sides ");
    return html;
}

void setUp(QLabel& label, const QString& text)
{
    label.setTextFormat(Qt::RichText);
    label.setWordWrap(true);
    label.setContentsMargins(22, 8, 22, 8);
    label.setText(text);
}

} // namespace

TEST_CASE("a label that remembers its size is as large as one that does not", "[gui][widgets]")
{
    RichLabel label;
    for (const int count : {4, 60, 1}) {
        setUp(label, words(count));
        QLabel plain;
        setUp(plain, words(count));
        for (int again = 0; again < 2; ++again) {
            for (const int width : {180, 320, 640}) {
                CAPTURE(count, again, width);
                CHECK(label.heightForWidth(width) == plain.heightForWidth(width));
            }
            CHECK(label.sizeHint() == plain.sizeHint());
            CHECK(label.minimumSizeHint() == plain.minimumSizeHint());
        }
        QFont larger = plain.font();
        larger.setPointSizeF(larger.pointSizeF() * 1.75);
        const int before = label.heightForWidth(320);
        label.setFont(larger);
        plain.setFont(larger);
        CHECK(label.heightForWidth(320) == plain.heightForWidth(320));
        CHECK(label.heightForWidth(320) > before);
        label.setFont({});
    }
}

} // namespace cupule::ui
