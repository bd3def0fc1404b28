// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.ohmstead.signal.Waveforms.BurstPattern;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** Reads the settings of a kind and makes signals of them. */
final class Settings {
    private static final Pattern WHOLE = Pattern.compile("\\d{1,10}");
    /** A comma followed by a space, or between two numbers of a list without spaces; decimal commas do not fit into a list. */
    private static final Pattern BETWEEN_TONES = Pattern.compile("[,;]\\s*|\\s+(?=[\\d.])");

    private static final double MOST_RELATIVE_DB = 140;

    private final SignalKind kind;
    private final Map<String, String> texts;
    private final Messages messages = Messages.of(Settings.class);

    Settings(SignalKind kind, Map<String, String> texts) {
        this.kind = kind;
        this.texts = texts;
        for (String id : texts.keySet()) {
            if (kind.settings().stream().noneMatch(setting -> setting.id().equals(id))) {
                String known = String.join(
                        ", ", kind.settings().stream().map(SignalSetting::id).toList());
                throw refuse("", "draft.unknown", id, kind.id(), known);
            }
        }
    }

    /** A setting that cannot be read or does not fit; a message for people. */
    static final class RefusedSetting extends IllegalArgumentException {
        private static final long serialVersionUID = 1L;
        private final String settingId;

        RefusedSetting(String settingId, String message) {
            super(message);
            this.settingId = settingId;
        }

        String settingId() {
            return settingId;
        }
    }

    private RefusedSetting refuse(String settingId, String key, Object... arguments) {
        return new RefusedSetting(settingId, messages.text(key, arguments));
    }

    private SignalSetting setting(String id) {
        return kind.settings().stream()
                .filter(setting -> setting.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private String text(SignalSetting setting) {
        return texts.getOrDefault(setting.id(), setting.usual()).strip();
    }

    private double number(String id) {
        SignalSetting setting = setting(id);
        return within(setting, parsed(id, text(setting), setting.unit()), setting.lowest(), setting.highest());
    }

    private double parsed(String id, String text, Unit unit) {
        String plain = text;
        if (unit == Unit.DECIBEL) {
            plain = plain.replaceAll("\\s*dBFS$", "").replace('\u2212', '-');
        }
        try {
            return QuantityParser.parse(plain, unit).value();
        } catch (QuantityException e) {
            throw new RefusedSetting(id, e.getMessage());
        }
    }

    private double within(SignalSetting setting, double value, double lowest, double highest) {
        if (!(value >= lowest && value <= highest)) {
            throw refuse(
                    setting.id(),
                    "draft.range",
                    setting.label(messages.locale()),
                    lowest,
                    highest,
                    setting.unit().symbol());
        }
        return value;
    }

    private double whole(String id) {
        SignalSetting setting = setting(id);
        String text = text(setting);
        if (!WHOLE.matcher(text).matches()) {
            throw refuse(id, "draft.whole", setting.label(messages.locale()), setting.lowest(), setting.highest());
        }
        return within(setting, Double.parseDouble(text), setting.lowest(), setting.highest());
    }

    private List<TestSignal.Tone> tones() {
        SignalSetting setting = setting("tones");
        List<TestSignal.Tone> tones = new ArrayList<>();
        for (String each : BETWEEN_TONES.split(text(setting))) {
            String[] parts = each.strip().split("@", 2);
            double hertz = within(setting, parsed("tones", parts[0], Unit.HERTZ), setting.lowest(), setting.highest());
            double relativeDb = parts.length > 1 ? parsed("tones", parts[1], Unit.DECIBEL) : 0;
            if (Math.abs(relativeDb) > MOST_RELATIVE_DB) {
                throw refuse("tones", "draft.relative", MOST_RELATIVE_DB);
            }
            tones.add(new TestSignal.Tone(hertz, relativeDb));
        }
        long different = tones.stream()
                .mapToDouble(TestSignal.Tone::frequencyHz)
                .distinct()
                .count();
        if (different < tones.size() || tones.size() > TestSignal.MOST_TONES) {
            throw refuse("tones", "draft.tones", TestSignal.MOST_TONES);
        }
        return tones;
    }

    TestSignal sine() {
        return new TestSignal.Sine(number("frequency"), number("level"), number("length"));
    }

    TestSignal warmUp() {
        return new TestSignal.WarmUp(number("frequency"), number("rated-level"), number("length"));
    }

    TestSignal multiTone() {
        return new TestSignal.MultiTone(tones(), number("level"), number("length"));
    }

    TestSignal steppedSweep() {
        double steps = number("steps");
        double from = number("from");
        double to = different("to", from, number("to"));
        double step = number("step");
        double most = TestSignal.LONGEST_SECONDS / (2 + Math.abs(Math.log(to / from)) / Math.log(2) * Math.rint(steps));
        if (step > most) {
            throw refuse("step", "draft.longSteps", most);
        }
        return new TestSignal.SteppedSweep(from, to, (int) Math.rint(steps), step, number("level"));
    }

    TestSignal logSweep() {
        double from = number("from");
        double to = different("to", from, number("to"));
        double length = number("length");
        double fadeIn = number("fade-in");
        double fadeOut = number("fade-out");
        if (fadeIn + fadeOut > length) {
            throw refuse("fade-in", "draft.fades", length);
        }
        return new TestSignal.LogSweep(from, to, number("level"), length, fadeIn, fadeOut);
    }

    private double different(String id, double from, double to) {
        if (Math.abs(Math.log(to / from)) < 1e-3) {
            throw refuse(id, "draft.different");
        }
        return to;
    }

    TestSignal toneBursts() {
        double on = number("on");
        double period = number("period");
        if (period < on) {
            throw refuse("period", "draft.period");
        }
        SignalSetting between = setting("between");
        double low = text(between).isEmpty() ? 0 : Levels.ratio(number("between"));
        return new TestSignal.ToneBursts(
                number("frequency"), number("level"), new BurstPattern(on, period, low, 0), number("length"));
    }

    TestSignal pinkNoise() {
        double from = number("from");
        double to = number("to");
        if (to < 2 * from) {
            throw refuse("to", "draft.octave");
        }
        return new TestSignal.PinkNoise(
                number("level"), number("crest"), from, to, (long) whole("seed"), number("length"));
    }

    TestSignal pair() {
        double low = number("low");
        double high = number("high");
        if (high <= low * 1.001) {
            throw refuse("high", "draft.higher");
        }
        return new TestSignal.TwoTone(low, high, number("ratio"), number("level"), number("length"));
    }
}
