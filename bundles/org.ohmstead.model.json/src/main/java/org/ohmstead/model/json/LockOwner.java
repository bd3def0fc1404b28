// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Who holds the lock of a project's folder, as far as the lock file says.
 *
 * @param text all that the lock file says, one line, such as {@code process 4711 on bench2, user lab, since 2026-03-02T09:14:05Z}; of a
 *     file without text "another program"
 * @param processId number of the process, when the text says it
 * @param host name of the computer, when the text says it
 * @param since when the lock was taken, when the text says it
 */
public record LockOwner(String text, OptionalLong processId, Optional<String> host, Optional<Instant> since) {
    private static final Pattern FORM = Pattern.compile("process (\\d{1,18}) on (.+), user (.*), since (\\S+)");
    private static final String NAMELESS = "a computer without a name";

    public LockOwner {
        Objects.requireNonNull(text, "text");
        Objects.requireNonNull(processId, "processId");
        Objects.requireNonNull(host, "host");
        Objects.requireNonNull(since, "since");
    }

    /** Returns whether the owner is this very process. */
    public boolean isThisProcess() {
        return isOnThisComputer()
                && processId.isPresent()
                && processId.getAsLong() == ProcessHandle.current().pid();
    }

    /** Returns whether the owner runs on this computer; false when it is not known. */
    public boolean isOnThisComputer() {
        return host.map(name -> name.equals(hostName())).orElse(false);
    }

    /** Returns the owner in the middle of a sentence, such as {@code process 4711 on this computer}. */
    public String inWords() {
        if (processId.isEmpty()) {
            return text;
        }
        if (isThisProcess()) {
            return Said.TEXTS.text("owner.window");
        }
        return Said.TEXTS.text(
                "owner.process",
                String.valueOf(processId.getAsLong()),
                isOnThisComputer() ? Said.TEXTS.text("owner.here") : named(host.orElse(NAMELESS)));
    }

    /** Returns all that is known of the owner in the middle of a sentence; the lock file itself says it in English. */
    String inFull() {
        Matcher matcher = FORM.matcher(text);
        return matcher.matches()
                ? Said.TEXTS.text(
                        "owner.written", matcher.group(1), named(matcher.group(2)), matcher.group(3), matcher.group(4))
                : text;
    }

    private static String named(String host) {
        return host.equals(NAMELESS) ? Said.TEXTS.text("owner.nameless") : host;
    }

    static LockOwner current() {
        return parse("process " + ProcessHandle.current().pid() + " on " + hostName() + ", user "
                + System.getProperty("user.name") + ", since "
                + Instant.now().truncatedTo(ChronoUnit.SECONDS));
    }

    static LockOwner parse(String content) {
        String text = content.strip();
        Matcher matcher = FORM.matcher(text);
        if (!matcher.matches()) {
            String words = text.isEmpty() ? Said.TEXTS.text("owner.other") : text;
            return new LockOwner(words, OptionalLong.empty(), Optional.empty(), Optional.empty());
        }
        return new LockOwner(
                text,
                OptionalLong.of(Long.parseLong(matcher.group(1))),
                Optional.of(matcher.group(2)),
                instant(matcher.group(4)));
    }

    private static Optional<Instant> instant(String text) {
        try {
            return Optional.of(Instant.parse(text));
        } catch (DateTimeException notATime) {
            return Optional.empty();
        }
    }

    private static String hostName() {
        for (String variable : new String[] {"HOSTNAME", "COMPUTERNAME"}) {
            String name = System.getenv(variable);
            if (name != null && !name.isBlank()) {
                return name;
            }
        }
        try {
            return InetAddress.getLocalHost().getHostName();
        } catch (UnknownHostException noName) {
            return NAMELESS;
        }
    }
}
