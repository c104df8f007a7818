// How far verifiers agree: kappa with its interval, the counts it rests on, and which records those are.

#pragma once

#include <QDialog>

#include "core/task/agreement.h"

namespace cupule::ui {

class AgreementDialog : public QDialog {
    Q_OBJECT
public:
    explicit AgreementDialog(const VerifierAgreement& agreement, QWidget* parent = nullptr);
};

/// The whole of it as rich text.
QString agreementHtml(const VerifierAgreement& agreement);

} // namespace cupule::ui
