// A signed file of Maud's that arrives at the office: her find, handed in on her laptop; and a store that does not have it yet.

#pragma once

#include "tests/gui/at_desk.h"
#include "tests/gui/review_scene.h"

#include "core/task/hand_out.h"
#include "core/task/keys.h"

namespace cupule::test {

struct Arrived {
    FindStore laptop;
    QTemporaryDir folder;
    QString path = folder.filePath(QStringLiteral("office.cupule"));
    QString profile = folder.filePath(QStringLiteral("ruth"));
    QString file = folder.filePath(QStringLiteral("maud.zip"));

    /// `apart`: of her find there are two versions that do not agree.
    explicit Arrived(bool apart = false)
    {
        if (apart)
            moveApart(laptop);
        NewStore office = tharnVale();
        office.kind = "office";
        const auto ruth = makeProfile(profile.toStdString(), person("RA", "Ruth Abara"), {Role::verifier, Role::office}, laptop.clock, laptop.random).value();
        REQUIRE(Session::create(path.toStdString(), office, ruth, laptop.clock, laptop.random));
        handOutTo(file);
    }
    void handOutTo(const QString& out)
    {
        HandOut wanted;
        wanted.out = out.toStdString();
        REQUIRE(handOut(*maud(), wanted));
    }
    std::unique_ptr<Session> maud()
    {
        const auto known = loadProfile(laptop.folder.filePath(QStringLiteral("maud")).toStdString()).value();
        return Session::open(laptop.path.toStdString(), known, laptop.clock, laptop.random).value();
    }
    [[nodiscard]] QString digits() const
    {
        return QString::fromStdString(ownKey(laptop.folder.filePath(QStringLiteral("maud")).toStdString())->fingerprint);
    }
    /// Ruth has compared Maud's key.
    void vouchFor(Session& office)
    {
        Vouching vouching;
        vouching.key = ownKey(laptop.folder.filePath(QStringLiteral("maud")).toStdString())->key;
        vouching.person = maud()->me();
        vouching.roles = {Role::volunteer};
        vouching.typedFingerprint = digits().toStdString();
        REQUIRE(vouch(office, vouching));
    }
    /// One byte of the file in the middle of what is packed is another.
    void damage()
    {
        QFile bytes(file);
        REQUIRE(bytes.open(QIODevice::ReadWrite));
        REQUIRE(bytes.seek(bytes.size() / 2));
        char byte = 0;
        REQUIRE(bytes.getChar(&byte));
        REQUIRE(bytes.seek(bytes.size() / 2));
        REQUIRE(bytes.putChar(static_cast<char>(byte ^ 1)));
    }
};

} // namespace cupule::test
