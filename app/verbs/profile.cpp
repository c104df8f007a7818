#include "app/fields.h"
#include "app/verbs/verbs.h"
#include "app/words.h"
#include "core/record/names.h"
#include "ui/bridge/words.h"

namespace cupule::app {

namespace {

int give(Run& run, const Profile& profile)
{
    nlohmann::json roles = nlohmann::json::array();
    std::string words;
    for (const Role role : profile.roles) {
        roles.push_back(std::string(name(role)));
        words += (words.empty() ? "" : ", ") + plain(ui::roleWord(role));
    }
    run.say("{name} ({code}), {roles}. The profile lies in {folder}.", {{"name", profile.person.name},
                                                                        {"code", profile.person.code},
                                                                        {"roles", words},
                                                                        {"folder", profile.folder}});
    if (!profile.sampleBlock.empty())
        run.say("Sample numbers of this device have the block {block}.", {{"block", profile.sampleBlock}});
    run.give({{"folder", profile.folder},
              {"device", profile.device.text()},
              {"person", profile.person.id.text()},
              {"code", profile.person.code},
              {"name", profile.person.name},
              {"roles", roles},
              {"block", profile.sampleBlock},
              {"grids", profile.gridFolder}});
    return done;
}

/// What making and changing a profile have in common.
class ProfileVerb : public Verb {
public:
    void declare(CLI::App& options) override
    {
        options.add_option("--code", m_code, "short code that stands on records and papers, as in MH");
        options.add_option("--name", m_name, "full name; stays in stores where this person works");
        options.add_option("--contact", m_contact, "how to reach this person");
        options.add_option(
            "--role", m_roles,
            "one or more of volunteer, sample-handler, trainer, verifier, office, with commas between");
        options.add_option("--block", m_block,
                           "two characters that the office issued for this device's sample numbers");
        options.add_option("--grids", m_grids, "folder with grid files for exact positions");
    }

protected:
    Status apply(Profile& profile) const
    {
        if (!m_code.empty())
            profile.person.code = m_code;
        if (!m_name.empty())
            profile.person.name = m_name;
        if (!m_contact.empty())
            profile.person.contact = m_contact;
        if (!m_block.empty())
            profile.sampleBlock = m_block;
        if (!m_grids.empty())
            profile.gridFolder = m_grids;
        if (m_roles.empty())
            return {};
        auto roles = readRoles(m_roles);
        if (!roles)
            return fail(roles.error());
        profile.roles = std::move(*roles);
        return {};
    }
    std::string m_code, m_name, m_contact, m_roles, m_block, m_grids;
};

class ProfileMake final : public ProfileVerb {
public:
    const char* name() const override { return "profile make"; }
    const char* summary() const override { return "Say who works on this device, and in which roles"; }
    const char* usage() const override { return "--code CODE [--name NAME] [--role ROLES]"; }
    const char* prose() const override
    {
        return "A profile says who is working, on which device and in which roles. It lies in a folder of "
               "its own, outside "
               "every store, so that a store copied to another laptop is noticed. Do not copy it from one "
               "laptop to another: "
               "make a new one there.\nWithout --role you are a volunteer.";
    }
    const char* examples() const override
    {
        return "cupule profile make --code MH --name \"Mary Hill\" --role volunteer,sample-handler --block "
               "TV";
    }
    Result<int> run(Run& run) override
    {
        Profile wanted;
        wanted.roles = {Role::volunteer};
        if (auto applied = apply(wanted); !applied)
            return fail(applied.error());
        auto made = makeProfile(profileFolder(run.shared().profile), wanted.person, wanted.roles, run.clock(),
                                run.random());
        if (!made)
            return fail(made.error());
        made->sampleBlock = wanted.sampleBlock;
        made->gridFolder = wanted.gridFolder;
        if (auto saved = saveProfile(*made); !saved)
            return fail(saved.error());
        return give(run, *made);
    }
};

class ProfileShow final : public Verb {
public:
    const char* name() const override { return "profile show"; }
    const char* summary() const override { return "Who works on this device"; }
    const char* usage() const override { return ""; }
    const char* prose() const override
    {
        return "Shows the profile in force: who is working, on which device, in which roles, and the folder "
               "in which "
               "it lies. That folder is the one named with --profile, else by CUPULE_PROFILE, else your own.";
    }
    void declare(CLI::App&) override {}
    Result<int> run(Run& run) override
    {
        const auto profile = run.profile();
        if (!profile)
            return fail(profile.error());
        return give(run, *profile);
    }
};

class ProfileChange final : public ProfileVerb {
public:
    const char* name() const override { return "profile change"; }
    const char* summary() const override { return "Change name, roles, sample block or grid folder"; }
    const char* usage() const override
    {
        return "[--name NAME] [--role ROLES] [--block BLOCK] [--grids FOLDER]";
    }
    const char* prose() const override
    {
        return "Changes what is named and leaves the rest. A role is only as good as the trust between the "
               "people who work "
               "together: it decides what the program lets you do here, and every decision carries your "
               "code.";
    }
    Result<int> run(Run& run) override
    {
        auto profile = run.profile();
        if (!profile)
            return fail(profile.error());
        if (auto applied = apply(*profile); !applied)
            return fail(applied.error());
        if (auto saved = saveProfile(*profile); !saved)
            return fail(saved.error());
        return give(run, *profile);
    }
};

} // namespace

std::unique_ptr<Verb> makeProfileMake()
{
    return std::make_unique<ProfileMake>();
}
std::unique_ptr<Verb> makeProfileShow()
{
    return std::make_unique<ProfileShow>();
}
std::unique_ptr<Verb> makeProfileChange()
{
    return std::make_unique<ProfileChange>();
}

} // namespace cupule::app
