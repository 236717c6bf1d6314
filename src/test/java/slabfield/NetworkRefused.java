package slabfield;

import java.io.IOException;
import java.net.InetAddress;
import java.security.Permission;
import slabfield.cli.CommandLineFace;

/** Runs command lines under a hook that says, and refuses, every use of the network. */
final class NetworkRefused {
    private NetworkRefused() {}

    /** Each argument is one command line, its words between single spaces; {@code lookup} tries the hook itself. */
    @SuppressWarnings("removal")
    public static void main(String[] commands) throws IOException {
        System.setProperty("java.awt.headless", "true");
        System.setSecurityManager(new Hook());
        for (String command : commands) {
            if (command.equals("lookup")) lookUp();
            else System.out.println("exit " + CommandLineFace.run(command.split(" ")));
        }
    }

    private static void lookUp() throws IOException {
        try {
            System.out.println(InetAddress.getByName("host.invalid"));
        } catch (SecurityException refused) {
            System.out.println("refused");
        }
    }

    @SuppressWarnings("removal")
    private static final class Hook extends SecurityManager {
        @Override
        public void checkPermission(Permission permission) {
            boolean network = permission instanceof java.net.SocketPermission
                    || permission instanceof java.net.URLPermission
                    || permission instanceof java.net.NetPermission
                            && !permission.getName().equals("specifyStreamHandler");
            if (network) refuse(permission.toString());
        }

        @Override
        public void checkConnect(String host, int port) {
            if (!isOwnNameForFonts(port)) refuse(host);
        }

        /** Java's fonts ask for the machine's own name, which is part of a file's name. */
        private static boolean isOwnNameForFonts(int port) {
            return port == -1
                    && StackWalker.getInstance()
                            .walk(frames ->
                                    frames.anyMatch(f -> f.getClassName().equals("sun.font.FcFontConfiguration")));
        }

        @Override
        public void checkListen(int port) {
            refuse("port " + port);
        }

        private static void refuse(String what) {
            System.out.println("NETWORK USED: " + what);
            throw new SecurityException("no network");
        }
    }
}
