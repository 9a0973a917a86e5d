#include <algorithm>
#include <cmath>

#include "core/quantity/gum.hpp"
#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/panels/doubt_row.hpp"
#include "web/panels/doubt_words.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/types.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

/// The parts of a reading's doubt, one below the other.
class DoubtPanel {
public:
    DoubtPanel(App& app, Ui& ui, Rect area, Field field, float row, float field_height)
        : app_(app), ui_(ui), area_(area), field_(field), key_(key_of_control(field)), row_(row),
          field_height_(field_height), reading_(app.assessment().readings[field]), entry_(app.entry(field)),
          doubt_(doubt_shown(app, field)), y_(area.y + 2) {
        for (const char* words : {"reading_doubt.instrument", "reading_doubt.plus_minus", "reading_doubt.shape",
                                  "reading_doubt.again"}) {
            label_ = std::max(label_, std::ceil(ui.text_width(app.say(words), small)) + 12);
        }
        if (area.w - label_ < 240) label_ = 0;
    }

    float draw() {
        const std::string name = app_.say(Message{"reading_doubt.panel"}.text("reading", field_name(app_, field_)));
        ui_.open(key_ + ".doubt_panel", Role::group, {area_.x, area_.y, area_.w, 0}, name);
        instrument();
        if (field_ != Field::tube_capacity) {
            plus_minus();
            shape();
            repeats();
        }
        sentences();
        ui_.close();
        ui_.rule({area_.x - 5, area_.y}, {area_.x - 5, y_}, Ink::copper, 2);
        return y_ + 6 - area_.y;
    }

private:
    /// The name of a control of this width at its left, or above where there is no room for both; returns the place of
    /// the control.
    Rect labelled(const std::string& key, std::string_view words, float width) {
        const std::string name = app_.say(words);
        if (label_ > 0 && label_ + width <= area_.w) {
            ui_.label(key + ".label", key, {area_.x, y_, label_, row_}, name, small);
            return {area_.x + label_, y_ + (row_ - field_height_) / 2, width, field_height_};
        }
        ui_.label(key + ".label", key, {area_.x, y_, area_.w, 20}, name, small);
        y_ += 20;
        return {area_.x, y_ + (row_ - field_height_) / 2, std::min(width, area_.w), field_height_};
    }

    /// The width in which a list shows whatever is chosen.
    float width_of(const Ui::Choice& choice) const {
        float wide = 0;
        for (const auto& [value, words] : choice.options) wide = std::max(wide, ui_.text_width(words, Type{}));
        return std::ceil(wide) + 26;
    }

    void instrument() {
        const Field at = chooses_instrument(field_);
        const auto all = instruments_for(at);
        if (all.empty()) return;
        const Instrument* usual = assumed_for(app_, at);
        Ui::Choice choice;
        choice.options.emplace_back(
            std::string(), usual == nullptr
                               ? app_.say("reading_doubt.assumed_digit")
                               : app_.say(Message{"reading_doubt.assumed"}.text("instrument", instrument_words(app_, *usual))));
        for (const Instrument& one : all) choice.options.emplace_back(one.key, instrument_words(app_, one));
        choice.chosen = instrument_by_key(at, app_.entry(at).instrument) != nullptr ? app_.entry(at).instrument : "";
        // By the reading whose panel it stands in, or the control would go along when another panel is opened.
        const std::string key = key_of_control(field_, ControlPart::instrument);
        // On a narrow page a long name is set smaller rather than cut.
        if (width_of(choice) > area_.w) choice.size = 13;
        ui_.select(key, labelled(key, "reading_doubt.instrument", width_of(choice)), choice);
        y_ += row_;
    }

    void plus_minus() {
        const std::string key = key_of_control(field_, ControlPart::plus_minus);
        const Rect box = labelled(key, "reading_doubt.plus_minus", 104);
        Ui::Field about;
        about.name = app_.say(Message{"reading_doubt.plus_minus_name"}
                                  .text("label", app_.say("reading_doubt.plus_minus"))
                                  .text("reading", field_name(app_, field_)));
        about.value = entry_.plus_minus;
        about.invalid = reading_.doubt.problem != Problem::none;
        about.described_by = doubt_ != nullptr ? key_ + ".doubt_says" : std::string();
        ui_.field(key, box, about);
        // What counts while nothing is typed.
        const bool blank = entry_.plus_minus.empty() && doubt_ != nullptr && in_unit_of_row(app_, field_);
        if (blank && !ui_.focused(key)) {
            ui_.draw_text({box.right() - 8, box.y + (box.h - 16) / 2}, number_in_row(app_, field_, *doubt_),
                          {Face::regular, 16, Ink::soft}, Anchor::end);
        }
        const std::string_view unit = info(app_.unit_of(entry_, reading_.unit, reading_.number.unit != UnitId::none)).symbol;
        if (!unit.empty()) {
            const Type type{Face::regular, 16, Ink::soft};
            ui_.text(key + ".symbol", {box.right() + 10, box.y + (box.h - 22) / 2, ui_.text_width(unit, type) + 2, 0},
                     unit, type);
        }
        y_ += row_;
    }

    /// The shape that is taken where none is chosen.
    Shape usual_shape() const {
        if (reading_.doubt.half_width) return Shape::rectangular;
        if (const Instrument* counts = instrument_of(app_, field_)) return counts->reading_shape;
        const auto all = instruments_for(field_);
        return all.empty() ? Shape::rectangular : all.front().reading_shape;
    }

    std::string shape_words(Shape shape) const { return app_.say("shape." + std::string(name_of(shape))); }

    void shape() {
        Ui::Choice choice;
        choice.options.emplace_back(std::string(),
                                    app_.say(Message{"reading_doubt.usual"}.text("what", shape_words(usual_shape()))));
        for (const Shape one : {Shape::rectangular, Shape::triangular, Shape::normal}) {
            choice.options.emplace_back(name_of(one), shape_words(one));
        }
        choice.chosen = shape_by_name(entry_.shape) ? entry_.shape : std::string();
        const std::string key = key_of_control(field_, ControlPart::shape);
        ui_.select(key, labelled(key, "reading_doubt.shape", width_of(choice)), choice);
        y_ += row_;
    }

    /// Fields for what was read again: those filled and a blank one.
    void repeats() {
        const std::string first = key_of_control(field_, ControlPart::repeat, 0);
        const Rect begin = labelled(first, "reading_doubt.again", area_.w - label_);
        const std::size_t shown = std::min(most_repeats, entry_.repeats.size() + 1);
        Flow flow(begin.x, y_, area_.x + area_.w - begin.x, row_, 6);
        for (std::size_t number = 0; number < shown; ++number) {
            const Rect place = flow.next(72);
            Ui::Field about;
            about.name = app_.say(Message{"reading_doubt.again_name"}
                                      .text("label", app_.say("reading_doubt.again"))
                                      .count("number", static_cast<long long>(number) + 1)
                                      .text("reading", field_name(app_, field_)));
            if (number < entry_.repeats.size()) about.value = entry_.repeats[number];
            about.invalid =
                parse_number(about.value, info(reading_.unit).measure).state == NumberText::State::not_a_number;
            ui_.field(key_of_control(field_, ControlPart::repeat, number),
                      {place.x, place.y + (row_ - field_height_) / 2, place.w, field_height_}, about);
        }
        y_ = flow.bottom();
        if (reading_.doubt.count > 1) say("mean", mean_words());
    }

    std::string mean_words() const {
        const TypedDoubt& typed = reading_.doubt;
        const int decimals = std::clamp(1 - reading_.last_place, 0, 8);
        if (!(typed.of_mean > 0)) {
            return app_.say(Message{"reading_doubt.mean_equal"}
                                .count("number", typed.count)
                                .quantity("mean", reading_.base, reading_.unit, decimals));
        }
        const double of_mean = difference_from_base(typed.of_mean, reading_.unit);
        const std::string shown = format_fixed(of_mean, std::clamp(decimals_of_uncertainty(of_mean, 2), 0, 12),
                                               app_.language().decimal_sign());
        return app_.say(Message{"reading_doubt.mean"}
                            .count("number", typed.count)
                            .quantity("mean", reading_.base, reading_.unit, decimals)
                            .text("of_mean", app_.language().with_unit(shown, reading_.unit)));
    }

    void say(const char* part, const std::string& words) {
        y_ += ui_.text(key_ + ".doubt_" + part, {area_.x, y_ + 2, area_.w, 0}, words, small) + 4;
    }

    /// What it comes to, and for the tube the limit of its scale.
    void sentences() {
        if (doubt_ == nullptr) return;
        if (field_ == Field::tube_capacity) return say("says", limit_words(*doubt_, "reading_doubt.limit"));
        std::string words = words_of_size();
        const Doubt* limit = field_ == Field::scale_reading ? class_limit(app_) : nullptr;
        if (limit != nullptr) {
            words = app_.say(Message{"reading_doubt.both"}.text("one", words).text(
                "other", limit_words(*limit, "reading_doubt.and_limit")));
        }
        say("says", words);
    }

    std::string limit_words(const Doubt& limit, std::string_view key) const {
        const std::string of_class = class_words(app_);
        return app_.say(Message{key}
                            .text("size", doubt_size(app_, limit))
                            .text("class", of_class.empty() ? app_.say("reading_doubt.no_class") : of_class));
    }

    std::string words_of_size() const {
        const std::string size = size_in_row(app_, field_, *doubt_);
        const Instrument* counts = instrument_of(app_, field_);
        switch (doubt_->from) {
            case DoubtFrom::typed: return app_.say(Message{"reading_doubt.by_typed"}.text("size", size));
            case DoubtFrom::digits: return app_.say(Message{"reading_doubt.by_digits"}.text("size", size));
            default: break;
        }
        if (counts == nullptr) return app_.say(Message{"reading_doubt.by_custom"}.text("size", size));
        if (counts->limit > 0) return app_.say(Message{"reading_doubt.by_division"}.text("size", size));
        return app_.say(Message{"reading_doubt.by_instrument"}
                            .text("size", size)
                            .text("instrument", instrument_words(app_, *counts)));
    }

    App& app_;
    Ui& ui_;
    Rect area_;
    Field field_;
    std::string key_;
    float row_;
    float field_height_;
    const Reading& reading_;
    const Entry& entry_;
    const Doubt* doubt_;
    float y_;
    float label_ = 0;
};

}  // namespace

float draw_doubt_panel(App& app, Ui& ui, Rect area, Field field, float row, float field_height) {
    // Room for a rule at the left that holds the parts together.
    const float inset = area.w > 340 ? 10.0f : 6.0f;
    return DoubtPanel(app, ui, {area.x + inset, area.y, area.w - inset, 0}, field, row, field_height).draw();
}

}  // namespace overwater
