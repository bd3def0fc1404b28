// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Looks for inputs that a reader fails for. Started by {@code product/ohmstead fuzz}.
 *
 * <p>Exit code 0 where nothing was found, 1 where something was, 2 for a word that there is not, 4 where the fuzzer could not be run.
 */
public final class Fuzzing {
    private static final System.Logger LOG = System.getLogger("fuzz");
    private static final int FOUND = 1;
    private static final int WRONG_USAGE = 2;
    private static final int FAILED = 4;
    private static final int OWN_ARGUMENTS = 2;
    private static final int USUAL_SECONDS = 600;
    private static final int SECONDS_PER_MINUTE = 60;
    private static final int MOST_SECONDS = 7 * 24 * 3600;
    private static final String LIST = "--list";
    private static final Pattern TIME = Pattern.compile("--(minutes|seconds)=(\\d{1,6})");

    private Fuzzing() {}

    /**
     * Fuzzes the targets named, or all, one after the other.
     *
     * @param words the bundle's folder, the folder for what is found, then {@code --list}, {@code --minutes=N} or {@code --seconds=N} for
     *     each target, and names of targets
     */
    public static void main(String[] words) {
        System.exit(
                run(Path.of(words[0]), Path.of(words[1]), Arrays.asList(words).subList(OWN_ARGUMENTS, words.length)));
    }

    static int run(Path bundle, Path work, List<String> words) {
        int seconds = USUAL_SECONDS;
        List<Target> chosen = new ArrayList<>();
        for (String word : words) {
            Matcher time = TIME.matcher(word);
            Optional<Target> target = Target.named(word);
            if (word.equals(LIST)) {
                Arrays.stream(Target.values()).forEach(each -> LOG.log(System.Logger.Level.INFO, listed(each)));
                return 0;
            } else if (time.matches()) {
                int count = Integer.parseInt(time.group(2));
                seconds = time.group(1).equals("minutes") ? count * SECONDS_PER_MINUTE : count;
            } else if (target.isPresent()) {
                chosen.add(target.get());
            } else {
                return wrong(
                        word + " is no target. There are " + names() + "; further --list, --minutes=N, --seconds=N.");
            }
        }
        if (seconds < 1 || seconds > MOST_SECONDS) {
            return wrong("The time must be a second to a week for each target.");
        }
        return run(bundle, work, chosen.isEmpty() ? List.of(Target.values()) : chosen, seconds);
    }

    private static int wrong(String sentence) {
        LOG.log(System.Logger.Level.ERROR, sentence);
        return WRONG_USAGE;
    }

    private static int run(Path bundle, Path work, List<Target> targets, int seconds) {
        List<String> lines = new ArrayList<>();
        boolean found = false;
        for (Target target : targets) {
            LOG.log(System.Logger.Level.INFO, target.word() + ": " + target.about() + ", " + seconds + " s ...");
            try {
                FuzzerRun.Outcome outcome = new FuzzerRun(bundle, work, target).run(seconds);
                found |= !outcome.finds().isEmpty();
                lines.add(line(target, seconds, outcome));
                outcome.finds().forEach(find -> lines.add("  found: " + find));
            } catch (IOException e) {
                LOG.log(System.Logger.Level.ERROR, target.word() + " could not be fuzzed: " + e.getMessage());
                return FAILED;
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return FAILED;
            }
        }
        lines.forEach(line -> LOG.log(System.Logger.Level.INFO, line));
        return found ? FOUND : 0;
    }

    private static String line(Target target, int seconds, FuzzerRun.Outcome outcome) {
        return String.format(
                Locale.ROOT,
                "fuzz target=%s seconds=%d inputs=%d coverage=%d finds=%d",
                target.word(),
                seconds,
                outcome.inputs(),
                outcome.coverage(),
                outcome.finds().size());
    }

    private static String listed(Target target) {
        return String.format(Locale.ROOT, "%-12s %s", target.word(), target.about());
    }

    private static String names() {
        return Arrays.stream(Target.values()).map(Target::word).collect(Collectors.joining(", "));
    }
}
