#include <doctest/doctest.h>

#include "tests/ui/draw_support.hpp"
#include "web/draw/mathml.hpp"
#include "web/draw/svg_painter.hpp"
#include "web/draw/typeset.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

using Kind = Formula::Kind;

Formula number(const char* t) { return Formula::leaf(Kind::number, t); }
Formula unit(const char* t) { return Formula::leaf(Kind::unit, t); }
Formula variable(const char* t) { return Formula::leaf(Kind::variable, t); }
Formula words(const char* t) { return Formula::leaf(Kind::words, t); }
Formula op(const char* t) { return Formula::leaf(Kind::operation, t); }
Formula row(std::vector<Formula> parts) { return Formula::of(Kind::row, std::move(parts)); }
Formula over(Formula a, Formula b) { return Formula::of(Kind::fraction, {std::move(a), std::move(b)}); }
Formula index(Formula a, Formula b) { return Formula::of(Kind::subscript, {std::move(a), std::move(b)}); }
Formula power(Formula a, Formula b) { return Formula::of(Kind::superscript, {std::move(a), std::move(b)}); }
Formula root(Formula a) { return Formula::of(Kind::root, {std::move(a)}); }
Formula bracketed(Formula a) { return Formula::of(Kind::bracketed, {std::move(a)}); }

/// n(Mg) = 0.0412 g / 24.305 g/mol, as the fourth step of a working shows it.
Formula amount() {
    return row({variable("n"), bracketed(words("Mg")), op("="),
                over(row({number("0.0412"), unit("g")}), row({number("24.305"), unit("g/mol")}))});
}

SpeechWords english() {
    SpeechWords w;
    w.plus = "plus";
    w.minus = "minus";
    w.times = "times";
    w.divided_by = "divided by";
    w.equals = "equals";
    w.negative = "negative";
    w.over = "over";
    w.begin_fraction = "fraction";
    w.end_fraction = "end fraction";
    w.squared = "squared";
    w.cubed = "cubed";
    w.to_the_power = "to the power";
    w.index = "sub";
    w.root_of = "root of";
    w.end_root = "end root";
    w.open = "open";
    w.close = "close";
    w.symbols = {{"g/mol", "grams per mole"}, {"g", "grams"}};
    return w;
}

std::string mathml(const Formula& f) {
    std::string markup;
    for (const Element& child : mathml_of(f).children) markup += to_markup(child);
    return markup;
}

}  // namespace

TEST_CASE("a fraction's parts stand centred above and below its line, at the height of the minus sign") {
    const PlainMeasure measure;
    float baseline = 0;
    const Picture p =
        typeset(row({over(number("1"), number("12345")), op("−"), number("2")}), 40, Ink::text, measure, &baseline);
    const Mark* one = text_mark(p, "1");
    const Mark* many = text_mark(p, "12345");
    const std::vector<const Mark*> lines = marks_of(p, Mark::Kind::line);
    REQUIRE((one != nullptr && many != nullptr));
    REQUIRE(lines.size() == 1);
    const float left = lines[0]->points[0].x;
    const float right = lines[0]->points[1].x;
    const float y = lines[0]->points[0].y;
    const Bounds above = text_bounds(*one, measure);
    const Bounds below = text_bounds(*many, measure);
    CHECK((above.left + above.right) / 2 == doctest::Approx((left + right) / 2));
    CHECK((below.left + below.right) / 2 == doctest::Approx((left + right) / 2));
    CHECK(above.bottom < y);
    CHECK(below.top > y);
    CHECK((left <= below.left && right >= below.right));
    // The minus sign of Source Sans 3 lies from 0.299 to 0.361 em above the baseline.
    CHECK(baseline - y == doctest::Approx(0.33 * 40));
    CHECK(text_mark(p, "2")->points[0].y == baseline);
}

TEST_CASE("no two parts of a formula overlap and all of them lie in its picture") {
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    const Formula formulas[] = {
        amount(),
        row({index(variable("V"), words("m")), op("="),
             over(row({variable("V"), index(variable("p"), words("dry")), index(variable("T"), words("0"))}),
                  row({variable("n"), index(variable("p"), words("0")), variable("T")}))}),
        row({variable("u"), op("="),
             root(row({power(index(variable("u"), words("1")), number("2")), op("+"),
                       power(index(variable("u"), words("2")), number("2"))}))}),
        row({variable("x"), op("="),
             power(bracketed(over(row({variable("a"), op("−"), number("1")}), number("2"))), number("3")), op("+"),
             root(over(number("1"), over(number("3"), number("4")))), op("×"), op("−"), number("4")}),
        power(number("10"), row({op("−"), number("3")})),
    };
    for (const Formula& formula : formulas) {
        for (const float size : {13.0F, 16.0F, 22.0F, 30.0F}) {
            const Picture p = typeset(formula, size, Ink::text, measure);
            CHECK(overlapping_texts(p, measure, 1.0F) == "");
            for (const Mark& mark : p.marks) {
                if (mark.kind == Mark::Kind::text) {
                    const Bounds b = text_bounds(mark, measure);
                    CHECK((b.left >= 0 && b.right <= p.width + 0.01F));
                    CHECK((b.top >= 0 && b.bottom <= p.height));
                    continue;
                }
                for (const Point& point : mark.points) {
                    CHECK((point.x >= -0.01F && point.x <= p.width + 0.01F));
                    CHECK((point.y >= -0.01F && point.y <= p.height + 0.01F));
                }
            }
        }
    }
}

TEST_CASE("spaces: before a unit as wide as a space, around an operation, none after a sign") {
    const PlainMeasure measure;
    const auto gap = [&](const Picture& p, const char* left, const char* right) {
        return text_bounds(*text_mark(p, right), measure).left - text_bounds(*text_mark(p, left), measure).right;
    };
    const Picture quantity = typeset(row({number("2.35"), unit("mL")}), 20, Ink::text, measure);
    CHECK(gap(quantity, "2.35", "mL") == doctest::Approx(4));
    const Picture difference = typeset(row({number("50"), op("−"), number("9.15")}), 20, Ink::text, measure);
    CHECK(gap(difference, "50", "−") == doctest::Approx(gap(difference, "−", "9.15")));
    CHECK(gap(difference, "50", "−") > 4);
    const Picture negative = typeset(row({op("−"), number("4")}), 20, Ink::text, measure);
    CHECK(gap(negative, "−", "4") == doctest::Approx(0));
    const Picture of_metal = typeset(row({variable("n"), bracketed(words("Mg"))}), 20, Ink::text, measure);
    CHECK(gap(of_metal, "n", "(") < 2);
}

TEST_CASE("indices have 0.7 of the size; parentheses grow with what they hold") {
    const PlainMeasure measure;
    float baseline = 0;
    const Picture p = typeset(power(index(variable("u"), words("i")), number("2")), 20, Ink::text, measure, &baseline);
    CHECK(text_mark(p, "i")->size == 14);
    CHECK(text_mark(p, "2")->size == 14);
    CHECK(text_mark(p, "i")->points[0].y > baseline);
    CHECK(text_mark(p, "2")->points[0].y < baseline);
    CHECK(text_mark(p, "u")->face == Face::italic);
    CHECK(text_mark(p, "i")->face == Face::regular);

    CHECK(text_mark(typeset(bracketed(words("Mg")), 20, Ink::text, measure), "(") != nullptr);
    const Picture tall = typeset(bracketed(over(number("1"), number("2"))), 20, Ink::text, measure);
    CHECK(text_mark(tall, "(") == nullptr);
    const std::vector<const Mark*> curves = marks_of(tall, Mark::Kind::polyline);
    REQUIRE(curves.size() == 2);
    const Bounds digit = text_bounds(*text_mark(tall, "1"), measure);
    CHECK(curves[0]->points.front().y >= curves[0]->points.back().y);
    CHECK(std::min(curves[0]->points.front().y, curves[0]->points.back().y) <= digit.top);
}

TEST_CASE("formulas that lack a part are shown as far as they go") {
    const PlainMeasure measure;
    CHECK(typeset(row({}), 16, Ink::text, measure).marks.empty());
    CHECK(text_mark(typeset(Formula::of(Kind::fraction, {number("7")}), 16, Ink::text, measure), "7") != nullptr);
    CHECK(typeset(Formula::of(Kind::root, {}), 16, Ink::text, measure).marks.empty());
    CHECK(mathml(Formula::of(Kind::superscript, {number("7")})) == "<mrow><mn>7</mn></mrow>");
    CHECK(spoken(Formula::of(Kind::fraction, {number("7")}), english()) == "7");
}

TEST_CASE("MathML says what is what") {
    CHECK(mathml(amount()) ==
          "<mrow><mi>n</mi><mrow><mo stretchy=\"false\">(</mo><mtext>Mg</mtext><mo stretchy=\"false\">)</mo></mrow><mo>=</mo>"
          "<mfrac><mrow><mn>0.0412</mn><mspace width=\"0.2em\"></mspace><mtext>g</mtext></mrow>"
          "<mrow><mn>24.305</mn><mspace width=\"0.2em\"></mspace><mtext>g/mol</mtext></mrow></mfrac></mrow>");
    CHECK(mathml(root(power(variable("u"), number("2")))) == "<msqrt><msup><mi>u</mi><mn>2</mn></msup></msqrt>");
    CHECK(mathml(index(variable("p"), words("dry"))) == "<msub><mi>p</mi><mtext>dry</mtext></msub>");
    CHECK(mathml(words("<script>")) == "<mtext>&lt;script&gt;</mtext>");
}

TEST_CASE("a formula is spoken in reading order") {
    CHECK(spoken(amount(), english()) == "n open Mg close equals 0.0412 grams over 24.305 grams per mole");
    CHECK(spoken(
              row({variable("V"), op("="), number("50"), op("−"), number("9.15"), op("+"), number("2.35"), unit("mL")}),
              english()) == "V equals 50 minus 9.15 plus 2.35 mL");
    CHECK(spoken(over(row({variable("a"), op("−"), number("1")}), number("2")), english()) ==
          "fraction a minus 1 over 2 end fraction");
    CHECK(spoken(root(row({power(index(variable("u"), number("1")), number("2")), op("+"),
                           power(variable("u"), number("3"))})),
                 english()) == "root of u sub 1 squared plus u cubed end root");
    CHECK(spoken(power(number("10"), row({op("−"), number("3")})), english()) == "10 to the power negative 3");
}
