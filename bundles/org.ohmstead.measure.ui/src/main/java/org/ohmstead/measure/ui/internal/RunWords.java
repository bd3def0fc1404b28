// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.engine.DryRun;
import org.ohmstead.measure.engine.RunOutcome;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/** What the console says of a run. */
final class RunWords {
    private static final Messages TEXTS = Messages.of(RunWords.class);

    private static final int DIGITS = 4;
    private static final int MOST_FIGURES = 6;
    private static final int MINUTE = 60;

    private RunWords() {}

    /** Returns minutes and seconds. */
    static String time(Duration duration) {
        long seconds = Math.max(0, duration.toSeconds());
        return String.format(Locale.ROOT, "%d:%02d", seconds / MINUTE, seconds % MINUTE);
    }

    /** Returns why nothing is known of an item yet. */
    static String beforeChecks(RunDesk runs) {
        return runs.whyNot().orElseGet(() -> TEXTS.text("run.goThrough"));
    }

    /** Returns what is to be said of an item that is over. */
    static String over(ItemRow row) {
        return switch (row.status()) {
            case DONE -> TEXTS.text("run.inLog", String.join(", ", row.entryIds()));
            case SKIPPED -> TEXTS.text("run.leftOut");
            case RUNNING -> TEXTS.text("run.beingMeasured");
            case RESTING -> TEXTS.text("run.restsBefore");
            default -> "";
        };
    }

    /** Returns whether a bench has yet to be chosen, or the one that was chosen is not there. */
    static boolean needsBench(RunDesk runs) {
        return runs.catalog().drivers().stream()
                .noneMatch(info -> info.id().equals(runs.choices().driverId()));
    }

    /** Returns the bench in a few words. */
    static String bench(RunDesk runs) {
        Optional<DriverInfo> driver = runs.catalog().drivers().stream()
                .filter(info -> info.id().equals(runs.choices().driverId()))
                .findFirst();
        if (driver.isEmpty()) {
            return runs.choices().driverId().isEmpty()
                    ? TEXTS.text("run.noBench")
                    : TEXTS.text("run.driverGone", runs.choices().driverId());
        }
        String name = driver.get().name();
        return switch (driver.get().kind()) {
            case REPLAYED -> TEXTS.text("run.replayed", name);
            case REAL, SIMULATED -> name;
        };
    }

    /** Returns how an item ended. */
    static Message ended(RunFeed.Ended ended) {
        RunOutcome outcome = ended.outcome();
        String more = outcome.remarks().isEmpty() ? "" : " " + String.join(" ", outcome.remarks());
        if (outcome instanceof RunOutcome.Finished finished) {
            return new Message(
                    more.isEmpty() ? Severity.NOTE : Severity.WARNING,
                    ended.item().stepId() + ": " + found(finished) + more);
        }
        boolean wanted = outcome instanceof RunOutcome.Cancelled;
        return new Message(
                wanted ? Severity.NOTE : Severity.ERROR, ended.item().stepId() + ": " + outcome.sentence() + more);
    }

    private static String found(RunOutcome.Finished finished) {
        Optional<Reading> reading = finished.record().result().power();
        if (reading.isPresent()) {
            return reading.get().channels().stream().map(RunWords::channel).collect(Collectors.joining(", ")) + ".";
        }
        List<Figure> figures = finished.record().result().figures();
        String some = figures.stream().limit(MOST_FIGURES).map(RunWords::figure).collect(Collectors.joining(", "));
        return figures.size() > MOST_FIGURES ? TEXTS.text("run.someFound", some) : some + ".";
    }

    private static String channel(ChannelReading channel) {
        String watts = Numbers.digits(channel.powerWatts(), DIGITS);
        boolean sure = channel.outcome() == EndPointOutcome.REACHED && channel.standardUncertaintyWatts() > 0;
        if (sure) {
            String expanded = Numbers.digits(2 * channel.standardUncertaintyWatts(), 2);
            return TEXTS.text("run.channelSure", channel.channel(), watts, expanded);
        }
        return TEXTS.text("run.channel." + channel.outcome().name(), channel.channel(), watts);
    }

    private static String figure(Figure figure) {
        String place = (figure.channel() + " " + figure.at()).strip();
        return (place.isEmpty() ? "" : place + " ")
                + Numbers.digits(figure.value(), DIGITS)
                + (figure.unit().symbol().isEmpty() ? "" : " " + figure.unit().symbol());
    }

    /** Returns what going through the plan found. */
    static String dryRun(DryRun dryRun, double stepSeconds) {
        long blocked = dryRun.steps().stream()
                .filter(step -> !step.mayRun() && step.unconfirmed().isEmpty())
                .count();
        long ask = dryRun.steps().stream()
                .filter(step -> !step.unconfirmed().isEmpty())
                .count();
        int count = dryRun.steps().size();
        if (count == 0) {
            return TEXTS.text("dry.nothingLeft");
        }
        long minutes = Math.max(1, Math.round(count * stepSeconds / MINUTE));
        return TEXTS.text(
                count == 1 ? "dry.left.one" : "dry.left.many",
                Integer.toString(count),
                counted("dry.blocked", blocked),
                counted("dry.ask", ask),
                Long.toString(minutes));
    }

    private static String counted(String key, long count) {
        String form = count == 0 ? ".none" : count == 1 ? ".one" : ".many";
        return TEXTS.text(key + form, Long.toString(count));
    }
}
