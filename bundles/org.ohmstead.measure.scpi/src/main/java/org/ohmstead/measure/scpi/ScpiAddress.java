// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.units.text.Messages;

/**
 * Where an instrument listens.
 *
 * @param host name or address, not blank; an IPv6 address without brackets
 * @param port 1 to 65535
 */
public record ScpiAddress(String host, int port) {
    private static final Messages TEXTS = Messages.of(ScpiAddress.class);
    /** The port that is taken when none is said: "scpi-raw" of the IANA service name and port number registry. */
    public static final int USUAL_PORT = 5025;

    private static final Pattern BRACKETED = Pattern.compile("\\[([0-9A-Fa-f:.%a-z]+)](?::(\\d{1,5}))?");
    private static final Pattern PLAIN = Pattern.compile("([A-Za-z0-9._-]+)(?::(\\d{1,5}))?");
    private static final int HIGHEST_PORT = 65535;

    public ScpiAddress {
        if (host == null || host.isBlank()) {
            throw new IllegalArgumentException("host is blank; it needs a name or an address");
        }
        Checks.within(port, 1, HIGHEST_PORT, "port");
    }

    /**
     * Reads "host:port", "host" or "[IPv6 address]:port".
     *
     * @throws MeasurementException when it is neither; it says what would be right
     */
    public static ScpiAddress parse(String text) throws MeasurementException {
        String stripped = Checks.present(text, "text").strip();
        Matcher matcher = stripped.startsWith("[") ? BRACKETED.matcher(stripped) : PLAIN.matcher(stripped);
        if (matcher.matches()) {
            int port = matcher.group(2) == null ? USUAL_PORT : Integer.parseInt(matcher.group(2));
            if (port >= 1 && port <= HIGHEST_PORT) {
                return new ScpiAddress(matcher.group(1), port);
            }
        }
        throw MeasurementException.of(() -> TEXTS.text("open.noInstrument", Answer.shown(stripped)));
    }

    @Override
    public String toString() {
        return (host.indexOf(':') >= 0 ? "[" + host + "]" : host) + ":" + port;
    }
}
