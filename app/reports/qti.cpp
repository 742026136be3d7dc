#include "app/reports/qti.hpp"

#include <fmt/format.h>

#include "app/reports/qti_parts.hpp"

namespace hardover {

using namespace reports_detail;

namespace {

constexpr const char* package_namespace = "http://www.imsglobal.org/xsd/imscp_v1p1";
constexpr const char* package_schema = "http://www.imsglobal.org/xsd/qti/qtiv2p2/qtiv2p2_imscpv1p2_v1p0.xsd";
constexpr const char* item_type = "imsqti_item_xmlv2p2";

class Manifest {
  public:
    explicit Manifest(const std::string& title) {
        pugi::xml_node root = document_.append_child("manifest");
        root.append_attribute("xmlns").set_value(package_namespace);
        root.append_attribute("xmlns:xsi").set_value("http://www.w3.org/2001/XMLSchema-instance");
        root.append_attribute("xsi:schemaLocation")
            .set_value((std::string(package_namespace) + " " + package_schema).c_str());
        root.append_attribute("identifier").set_value("MANIFEST");
        root.append_child(pugi::node_comment).set_value((" " + title + " ").c_str());
        pugi::xml_node metadata = root.append_child("metadata");
        metadata.append_child("schema").text().set("QTIv2.2 Package");
        metadata.append_child("schemaversion").text().set("1.0.0");
        root.append_child("organizations");
        resources_ = root.append_child("resources");
    }

    void add(const std::string& identifier, const std::string& file, const std::string& picture) {
        pugi::xml_node resource = resources_.append_child("resource");
        resource.append_attribute("identifier").set_value(identifier.c_str());
        resource.append_attribute("type").set_value(item_type);
        resource.append_attribute("href").set_value(file.c_str());
        for (const std::string& name : {file, picture}) {
            if (!name.empty()) resource.append_child("file").append_attribute("href").set_value(name.c_str());
        }
    }

    std::string text() const { return written(document_); }

  private:
    pugi::xml_document document_;
    pugi::xml_node resources_;
};

// A title may not end a comment.
std::string without_dashes(std::string text) {
    for (std::size_t at = text.find("--"); at != std::string::npos; at = text.find("--")) text.erase(at, 1);
    return text;
}

// "q01.signs.air_in_oil.wander": letters, digits, dots and underscores, a letter first.
std::string identifier_of(const std::string& number, const std::string& stem) {
    std::string identifier = number + ".";
    for (const char letter : stem) identifier += letter == '/' ? '.' : letter;
    return identifier;
}

}  // namespace

Result<std::vector<PackageFile>> qti_package(const Knowledge& knowledge,
                                             const std::vector<study::Item>& items, const QtiWish& wish) {
    const Result<typeset::Typesetter> typesetter = typeset::Typesetter::open(wish.fonts_folder);
    if (!typesetter) return typesetter.error();
    Manifest manifest(without_dashes(wish.title));
    std::vector<PackageFile> files(1);
    for (std::size_t i = 0; i < items.size(); ++i) {
        const std::string number = fmt::format("q{:02}", i + 1);
        const std::string identifier = identifier_of(number, items[i].stem.id);
        std::optional<Picture> picture;
        if (items[i].drawing && items[i].stem.form == study::Form::place) {
            Result<Picture> painted = picture_of(items[i], typesetter.value());
            if (!painted) return painted.error();
            picture = std::move(painted).value();
        }
        const std::string picture_file = picture ? "items/" + number + ".png" : "";
        const std::string file = "items/" + number + ".xml";
        files.push_back({file, written(qti_item(knowledge, items[i], identifier,
                                                picture ? &*picture : nullptr, number + ".png"))});
        if (picture) files.push_back({picture_file, picture->png});
        manifest.add(identifier, file, picture_file);
    }
    files.front() = {"imsmanifest.xml", manifest.text()};
    return files;
}

}  // namespace hardover
